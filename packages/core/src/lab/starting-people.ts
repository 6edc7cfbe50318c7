import { toMilliseconds } from '../kernel/clock.ts';
import type { CompiledWork } from './compiled-lab.ts';
import { largestInBatch } from './content.ts';
import { attendedDuration, attendedTypical, materialChangeFor, typicalRun } from './durations.ts';
import type { Load } from './load.ts';
import type { Simulation } from './simulation.ts';
import type { Unit } from './unit.ts';
import type { UnitClass } from './unit-class.ts';

/** The people for the first phase of a run, without whom it is not launched. */
export class StartingPeople {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /** Finds them; true when nobody is needed. `staff.found` then holds them. */
  find(unitClass: UnitClass, unit: Unit): boolean {
    const { work } = unitClass.compiled.phases[0];
    return work === null || this.simulation.staff.find(work.queue, this.need(unitClass, unit));
  }

  /** Whether work that may pause would set enough of them free for a rush seed. */
  canBeFreed(unitClass: UnitClass, unit: Unit, seed: Load): boolean {
    const { compiled, staff } = this.simulation;
    const { work } = unitClass.compiled.phases[0];
    if (!compiled.rushInterrupts || seed.rush !== 0 || work === null) return false;
    return staff.canInterrupt(work.queue, this.need(unitClass, unit));
  }

  /** Interrupts work until enough of them are free, if they can be. */
  free(unitClass: UnitClass, unit: Unit): void {
    const work = unitClass.compiled.phases[0].work as CompiledWork;
    this.simulation.staff.interruptFor(work.queue, this.need(unitClass, unit));
  }

  /** Milliseconds that must fit before the end of a window for the first phase of a run; 0 when it may pause. */
  private need(unitClass: UnitClass, unit: Unit): number {
    const { compiled, stageWork, units } = this.simulation;
    const phase = unitClass.compiled.phases[0];
    const work = phase.work as CompiledWork;
    if (work.pausable) return 0;
    const { compiled: group } = units.groups[unit.group];
    if (phase.what === 'run') {
      const { batchSampler } = unitClass.compiled;
      if (!compiled.fitOnDrawn) {
        return largestInBatch(unitClass, group, (load, share) =>
          typicalRun(this.simulation, unitClass, load, share),
        );
      }
      return batchSampler === null
        ? // What is drawn for a part of a job is its share, but for the noise of single pieces.
          largestInBatch(unitClass, group, (load, share) => Math.round(share * stageWork.drawn(load)))
        : toMilliseconds(batchSampler.sample(unit.uniforms[phase.slot]));
    }
    const change = materialChangeFor(group, unit, unitClass.compiled.material);
    return compiled.fitOnDrawn ? attendedDuration(unit, phase, change) : attendedTypical(phase, change);
  }
}
