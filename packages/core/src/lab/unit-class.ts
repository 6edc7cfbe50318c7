import { WaitClock } from '../observe/wait-clock.ts';
import type { CompiledUnitClass } from './compiled-lab.ts';
import type { Load } from './load.ts';
import { RankedList } from './ranked-list.ts';
import { ShapedBuild } from './shaped-build.ts';

/** Loads that wait for a machine or station and may run together, in one replication. */
export class UnitClass {
  readonly compiled: CompiledUnitClass;
  readonly loads = new RankedList<Load>();
  readonly clock = new WaitClock();
  /** Where a build is packed and timed from shapes; null where parts state their space and time. */
  readonly shaped: ShapedBuild | null;
  /** Machine space, or station capacity in its own unit, that the waiting loads take together. */
  waitingSize = 0;
  /** Whether a launch condition held when the class was last looked at. */
  mayLaunch = false;
  /** Whether the hours of the equipment, or of running with nobody there, forbid a start. */
  isBlocked = false;
  /** Whether it is for a build that has been decided on and is not started yet. */
  isPending = false;
  /** Whether only a fixed launch time allows it, so that only parts ready before that time may go. */
  onlyReadyBefore = Number.POSITIVE_INFINITY;

  constructor(compiled: CompiledUnitClass) {
    this.compiled = compiled;
    this.shaped = compiled.shapes === null ? null : new ShapedBuild(compiled.shapes);
  }

  reset(): void {
    this.loads.clear();
    this.clock.reset();
    this.waitingSize = 0;
    this.mayLaunch = false;
    this.isBlocked = false;
    this.isPending = this.compiled.pinned !== null;
    this.onlyReadyBefore = Number.POSITIVE_INFINITY;
  }

  /** First-ranked load that may go; null when nothing waits or nothing may go. */
  get seed(): Load | null {
    if (!this.mayLaunch) return null;
    let load = this.loads.first;
    while (load !== null && load.readyAt >= this.onlyReadyBefore) load = load.after;
    return load;
  }
}
