import type {
  BuildFailure,
  BuildStage,
  Lab,
  LaunchRule,
  PartType,
  Stage,
  StationStage,
} from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler } from '../kernel/sampler.ts';
import type { AttendanceCompiler } from './compile-attendance.ts';
import { compileConditions, compileFailure } from './compile-conditions.ts';
import { coolDownStepOf, machinePhases, stationPhases } from './compile-phases.ts';
import {
  type CompiledCarrier,
  type CompiledTailWork,
  type CompiledUnit,
  type CompiledUnitClass,
  type CompiledUnitGroup,
  DRAW_SLOTS,
} from './compiled-lab.ts';
import { SPACE_TOLERANCE } from './space.ts';

/**
 * Finds out, while parts are compiled, what may run together in one machine or station (a *class*), and puts
 * the groups of units together from it.
 */
export class UnitCompiler {
  private readonly lab: Lab;
  private readonly attendance: AttendanceCompiler;
  private readonly classes: CompiledUnitClass[] = [];
  /** What tells classes apart, as text; at the positions of `classes`. */
  private readonly keys: string[] = [];
  private readonly materials: string[] = [];

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
    if (part.space > capacity + SPACE_TOLERANCE) {
      throw new Error(`A piece of "${part.name}" is larger than what "${stage.machineGroup}" holds.`);
    }
    const key = JSON.stringify(['build', stage.name, stage.machineGroup, part.material, part.settings, tail]);
    return this.classFor(key, () => {
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
        typicalBeforeRun: toMilliseconds(
          (machine.prepare?.duration.typicalHours ?? 0) +
            (machine.setUp?.duration.typicalHours ?? 0) +
            (machine.warmUp?.typicalHours ?? 0) +
            (machine.firstLayers?.duration.typicalHours ?? 0),
        ),
        tailWork: tail.map(tailWorkOf),
      };
    });
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
        typicalBeforeRun: 0,
        tailWork: [],
      };
    });
  }

  unitGroups(kindRanks: { machine: number; station: number }): CompiledUnitGroup[] {
    let firstUnit = 0;
    const common = (name: string, count: number, index: number) => {
      const classes = this.classes.filter((unitClass) => unitClass.group === index);
      const first = firstUnit;
      firstUnit += count;
      return {
        index,
        name,
        firstUnit: first,
        count,
        classes: classes.map((unitClass) => unitClass.index),
        startQueues: startQueuesOf(classes),
      };
    };
    const machines = this.lab.machines.map((machine, index): CompiledUnitGroup => {
      const outside =
        machine.coolDown !== null && machine.coolDown.where === 'outside' ? machine.coolDown : null;
      const shared = common(machine.name, machine.count, index);
      return {
        ...shared,
        kind: 'machine',
        kindRank: kindRanks.machine,
        capacity: machine.capacity,
        capacityUnit: 'space',
        launch: orAtOnce(machine.launch),
        conditions: compileConditions(machine, machine.name, this.attendance),
        failure: compileFailure(machine.failure, machine.name, this.attendance),
        carrier: machine.carrier === null ? -1 : this.carrierIndex(machine.carrier),
        initialMaterial: machine.initialMaterial === null ? -1 : this.material(machine.initialMaterial),
        materialChanges: machine.materialChanges.map((change) => ({
          from: change.from === null ? -1 : this.material(change.from),
          to: change.to === null ? -1 : this.material(change.to),
          sampler: createSampler(change.duration.distribution),
          typical: toMilliseconds(change.duration.typicalHours),
          attended: change.attended,
        })),
        outsideCoolDown: outside === null ? null : createSampler(outside.duration.distribution),
        randomSlots: this.randomSlots(shared.classes, {
          change: machine.materialChanges.some((change) => change.duration.distribution.kind !== 'constant'),
          coolDown: outside !== null && outside.duration.distribution.kind !== 'constant',
          failure: machine.failure,
          ...this.randomPrint(machine.name),
        }),
      };
    });
    const stations = this.lab.stations.map((station, position): CompiledUnitGroup => {
      const shared = common(station.name, station.count, this.lab.machines.length + position);
      return {
        ...shared,
        kind: 'station',
        kindRank: kindRanks.station,
        capacity: station.capacity,
        capacityUnit: station.unit,
        launch: {
          fullShare: station.fullShare,
          waitedHours: station.waitedHours,
          beforeClosing: false,
          fixedHours: null,
          promiseAtRisk: false,
          preferAttendedEnd: false,
        },
        conditions: compileConditions(station, station.name, this.attendance),
        failure: null,
        carrier: -1,
        initialMaterial: -1,
        materialChanges: [],
        outsideCoolDown: null,
        randomSlots: this.randomSlots(shared.classes, {
          change: false,
          coolDown: false,
          failure: null,
          print: false,
          printPerPart: false,
          run: this.lab.parts.some((part) =>
            part.stages.some(
              (stage) =>
                stage.kind === 'station' &&
                stage.stationGroup === station.name &&
                stage.basis === 'batch' &&
                stage.run.distribution.kind !== 'constant',
            ),
          ),
        }),
      };
    });
    return [...machines, ...stations];
  }

  units(groups: readonly CompiledUnitGroup[]): CompiledUnit[] {
    return groups.flatMap((group) =>
      Array.from({ length: group.count }, (_, position) => ({
        index: group.firstUnit + position,
        group: group.index,
        name: `${group.name} ${position + 1}`,
      })),
    );
  }

  carriers(): CompiledCarrier[] {
    return this.lab.carriers.map((pool) => ({
      count: pool.count,
      groups: Int32Array.from(
        this.lab.machines.flatMap((machine, index) => (machine.carrier === pool.name ? [index] : [])),
      ),
    }));
  }

  /** Position of a material; -1 is no material at all. */
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

  private machineGroupIndex(stage: BuildStage): number {
    const index = this.lab.machines.findIndex((group) => group.name === stage.machineGroup);
    if (index < 0) throw new Error(`Stage "${stage.name}" names no machine group of the lab.`);
    return index;
  }

  private carrierIndex(name: string): number {
    const index = this.lab.carriers.findIndex((pool) => pool.name === name);
    if (index < 0) throw new Error(`There is no carrier "${name}" in the lab.`);
    return index;
  }

  private randomPrint(machineGroup: string): { print: boolean; printPerPart: boolean; run: boolean } {
    const prints = this.lab.parts
      .filter((part) =>
        part.stages.some((stage) => stage.kind === 'build' && stage.machineGroup === machineGroup),
      )
      .flatMap((part) => (part.print === null ? [] : [part.print]));
    return {
      print: prints.some((print) => print.perBuild.distribution.kind !== 'constant'),
      printPerPart: prints.some((print) => print.perPart.distribution.kind !== 'constant'),
      run: false,
    };
  }

  private randomSlots(
    classIndexes: readonly number[],
    random: {
      change: boolean;
      coolDown: boolean;
      failure: BuildFailure | null;
      print: boolean;
      printPerPart: boolean;
      run: boolean;
    },
  ): number[] {
    const slots = new Set<number>();
    const add = (slot: (typeof DRAW_SLOTS)[number], isRandom: boolean): void => {
      if (isRandom) slots.add(DRAW_SLOTS.indexOf(slot));
    };
    for (const index of classIndexes) {
      const unitClass = this.classes[index];
      for (const phase of unitClass.phases) {
        const isRandom = phase.work !== null ? !phase.work.constant : !phase.constant;
        // The run of a station is drawn per unit only when it is drawn per batch.
        if (isRandom && phase.what !== 'run') slots.add(phase.slot);
      }
      unitClass.tailWork.forEach((work, offset) => {
        if (work !== null && !work.constant) slots.add(DRAW_SLOTS.length + offset);
      });
    }
    add('change', random.change);
    add('cool-down', random.coolDown);
    add('print', random.print);
    add('print per part', random.printPerPart);
    add('run', random.run);
    const { failure } = random;
    add('failure', failure !== null && failure.chancePerBuild > 0);
    add('failure point', failure !== null);
    add('failure by hour', failure !== null && failure.perPrintHour > 0);
    add('cleaning', failure !== null && failure.cleaning?.duration.distribution.kind !== 'constant');
    return [...slots].sort((a, b) => a - b);
  }
}

/** The stages of level `build` that directly follow a build. */
function tailOf(following: readonly Stage[]): Stage[] {
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

/** A rule that states no condition launches with the first part. */
function orAtOnce(launch: LaunchRule): LaunchRule {
  const isEmpty =
    launch.fullShare === null &&
    launch.waitedHours === null &&
    launch.fixedHours === null &&
    !launch.beforeClosing &&
    !launch.promiseAtRisk;
  return isEmpty ? { ...launch, fullShare: 0 } : launch;
}

function startQueuesOf(classes: readonly CompiledUnitClass[]): number[] {
  const queues = new Set<number>();
  for (const unitClass of classes) {
    const first = unitClass.phases[0];
    if (first?.work != null) queues.add(first.work.queue);
  }
  return [...queues];
}
