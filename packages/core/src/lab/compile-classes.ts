import type {
  BuildStage,
  Lab,
  MachineGroup,
  PartShape,
  PartType,
  PinnedBuild,
  Stage,
  StationStage,
} from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler } from '../kernel/sampler.ts';
import type { AttendanceCompiler } from './compile-attendance.ts';
import { coolDownStepOf, machinePhases, stationPhases } from './compile-phases.ts';
import type { CompiledShapes, CompiledTailWork, CompiledUnitClass } from './compiled-lab.ts';
import { roomIn } from './space.ts';

/** Finds out, while parts are compiled, what may run together in one machine or station (a *class*). */
export class ClassCompiler {
  private readonly lab: Lab;
  private readonly attendance: AttendanceCompiler;
  private readonly classes: CompiledUnitClass[] = [];
  /** What tells classes apart, as text; at the positions of `classes`. */
  private readonly keys: string[] = [];
  private readonly materials: string[] = [];
  /** Shapes that were found so far; at the positions of `classes`. */
  private readonly shapes: PartShape[][] = [];

  constructor(lab: Lab, attendance: AttendanceCompiler) {
    this.lab = lab;
    this.attendance = attendance;
  }

  get unitClasses(): readonly CompiledUnitClass[] {
    return this.classes;
  }

  get materialNames(): readonly string[] {
    return this.materials;
  }

  /** Parts share a build when machine group, material, settings and the stages they stay together for agree. */
  buildClass(part: PartType, stage: BuildStage, following: readonly Stage[]): number {
    const tail = tailOf(following);
    const { capacity } = this.lab.machines[this.machineGroupIndex(stage)];
    if (part.space > roomIn(capacity)) {
      throw new Error(`A piece of "${part.name}" is larger than what "${stage.machineGroup}" holds.`);
    }
    const isShaped = part.print?.kind === 'shape';
    const { name, machineGroup } = stage;
    const key = JSON.stringify(['build', name, machineGroup, part.material, part.settings, isShaped, tail]);
    const index = this.classFor(key, () => {
      const group = this.machineGroupIndex(stage);
      const machine = this.lab.machines[group];
      const phases = machinePhases(machine, stage.name, this.attendance);
      if (phases.every((phase) => phase.phase !== 'set-up' || phase.what !== 'attended')) {
        if (machine.materialChanges.some((change) => change.attended)) {
          throw new Error(`"${machine.name}" has an attended material change but no set-up to lengthen.`);
        }
      }
      return {
        group,
        material: this.material(part.material),
        phases,
        runPhase: phases.findIndex((phase) => phase.what === 'run'),
        runBasis: 'print',
        batchSampler: null,
        typicalRun: 0,
        coolDownStep: coolDownStepOf(machine),
        shapes: isShaped ? this.shapesOf(machine, part) : null,
        tailWork: tail.map(tailWorkOf),
        pinned: null,
      };
    });
    this.addShape(index, part);
    return index;
  }

  /** Loads share a batch when the stage is the same in every respect. */
  stationClass(stage: StationStage): number {
    return this.classFor(JSON.stringify(['station', stage]), () => {
      const position = this.lab.stations.findIndex((group) => group.name === stage.stationGroup);
      if (position < 0) throw new Error(`Stage "${stage.name}" names no station group of the lab.`);
      const phases = stationPhases(stage, this.attendance);
      return {
        group: this.lab.machines.length + position,
        material: -1,
        phases,
        runPhase: phases.findIndex((phase) => phase.what === 'run'),
        runBasis: stage.basis,
        typicalRun: toMilliseconds(stage.run.typicalHours),
        batchSampler: stage.basis === 'batch' ? createSampler(stage.run.distribution) : null,
        coolDownStep: -1,
        shapes: null,
        tailWork: [],
        pinned: null,
      };
    });
  }

  /**
   * A class of its own for a build that has been decided on.
   *
   * @param ofClasses the classes in which its jobs would be built otherwise
   * @throws Error when its jobs cannot share a build, or it has none
   */
  pinnedClass({ machine, jobs, fromHour }: PinnedBuild, ofClasses: readonly number[]): void {
    const [ofClass, ...others] = [...new Set(ofClasses)];
    if (ofClass === undefined || others.length > 0) {
      throw new Error(`The jobs that are pinned to "${machine}" cannot share a build on it.`);
    }
    const pinned = { ofClass, machine, jobs: new Set(jobs), from: toMilliseconds(fromHour) };
    this.classes.push({ ...this.classes[ofClass], index: this.classes.length, pinned });
  }

  /** Position of a material, which is entered when it is new. */
  material(name: string): number {
    const found = this.materials.indexOf(name);
    return found >= 0 ? found : this.materials.push(name) - 1;
  }

  private classFor(key: string, make: () => Omit<CompiledUnitClass, 'index'>): number {
    const found = this.keys.indexOf(key);
    if (found >= 0) return found;
    this.keys.push(key);
    return this.classes.push({ index: this.classes.length, ...make() }) - 1;
  }

  private shapesOf(machine: MachineGroup, part: PartType): CompiledShapes {
    if (machine.shaped === null) {
      throw new Error(
        `"${part.name}" has a shape, but "${machine.name}" has nothing to pack and time it by.`,
      );
    }
    const shapes: PartShape[] = [];
    this.shapes[this.classes.length] = shapes;
    return { builds: machine.shaped, shapes, shapeOfPart: new Int32Array(this.lab.parts.length).fill(-1) };
  }

  /** The classes are found while the parts are compiled, so the shapes of a class come one after another. */
  private addShape(classIndex: number, part: PartType): void {
    const { shapes } = this.classes[classIndex];
    if (shapes === null || part.print?.kind !== 'shape') return;
    shapes.shapeOfPart[this.lab.parts.indexOf(part)] = this.shapes[classIndex].push(part.print.shape) - 1;
  }

  private machineGroupIndex(stage: BuildStage): number {
    const index = this.lab.machines.findIndex((group) => group.name === stage.machineGroup);
    if (index < 0) throw new Error(`Stage "${stage.name}" names no machine group of the lab.`);
    return index;
  }
}

/** The stages of level `build` that directly follow a build. */
export function tailOf(following: readonly Stage[]): Stage[] {
  const end = following.findIndex((stage) => stage.level !== 'build');
  return following.slice(0, end < 0 ? following.length : end);
}

/** What is drawn with the build for one of its following stages; null when it is drawn otherwise. */
function tailWorkOf(stage: Stage): CompiledTailWork | null {
  const distribution =
    stage.kind === 'wait'
      ? stage.duration.distribution
      : stage.kind === 'work' && stage.basis === 'build'
        ? stage.work.duration.distribution
        : stage.kind === 'station' && stage.basis === 'build'
          ? stage.run.distribution
          : null;
  return distribution === null
    ? null
    : { sampler: createSampler(distribution), constant: distribution.kind === 'constant' };
}
