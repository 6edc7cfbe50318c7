import type { Load } from './load.ts';
import type { Simulation } from './simulation.ts';
import type { Unit } from './unit.ts';

/** Build platforms, trays and build units that machines share: how many are free, and who holds one. */
export class Carriers {
  private readonly simulation: Simulation;
  /** For each pool. */
  private readonly free: Int32Array;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
    this.free = new Int32Array(simulation.compiled.carriers.length);
  }

  reset(): void {
    this.simulation.compiled.carriers.forEach((pool, index) => {
      this.free[index] = pool.count;
    });
  }

  /** @param pool -1 for machines that need no carrier */
  isMissing(pool: number): boolean {
    return pool >= 0 && this.free[pool] <= 0;
  }

  /** Gives a build its carrier. @param pool -1 for none */
  take(build: Load, pool: number): void {
    build.carrier = pool;
    if (pool >= 0) this.changeFree(pool, -1);
  }

  /** Takes the carrier from a load, if it holds one. */
  release(load: Load): void {
    if (load.carrier >= 0) this.giveBack(load.carrier);
    load.carrier = -1;
  }

  /** Takes from a machine the carrier of a build that was lost in it, if there is one. */
  releaseHeld(unit: Unit): void {
    if (unit.heldCarrier >= 0) this.giveBack(unit.heldCarrier);
    unit.heldCarrier = -1;
  }

  private giveBack(pool: number): void {
    this.changeFree(pool, 1);
    const { compiled, units } = this.simulation;
    for (const group of compiled.carriers[pool].groups) units.groups[group].isStale = true;
  }

  private changeFree(pool: number, change: number): void {
    this.free[pool] += change;
    const { compiled, units } = this.simulation;
    for (const group of compiled.carriers[pool].groups) units.groups[group].isUnsettled = true;
  }
}
