import {
  CAUSE_BATCH,
  CAUSE_CARRIER,
  CAUSE_MACHINE,
  CAUSE_MACHINE_DOWN,
  CAUSE_SHIFT,
} from '../observe/wait-clock.ts';
import type { Simulation } from './simulation.ts';
import type { Unit } from './unit.ts';
import type { UnitClass } from './unit-class.ts';
import type { UnitGroup } from './unit-group.ts';
import { IDLE, WAITING_TO_FILL, WAITING_TO_START } from './unit-states.ts';

/** Why queues stand still, and what idle machines and stations wait for. */
export class Standstill {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /**
   * At the end of an instant: why each queue stands still, and what idle units wait for. A group in which nothing
   * happened waits for the same as before unless it waits for people and their cause has changed.
   */
  settle(): void {
    const { now, staff, units } = this.simulation;
    let peopleChanged = false;
    for (const queue of staff.queues) {
      const { cause } = queue;
      if (cause !== queue.settledCause) {
        queue.settledCause = cause;
        peopleChanged = true;
      }
      if (queue.tasks.length > 0) queue.clock.setCause(cause, now);
    }
    for (const group of units.groups) {
      if (group.isUnsettled) this.settleIdle(group);
      else if (!peopleChanged) continue;
      if (group.waiting === 0) continue;
      for (const unitClass of group.classes) {
        if (unitClass.loads.length > 0) unitClass.clock.setCause(this.causeOf(group, unitClass), now);
      }
    }
  }

  private settleIdle(group: UnitGroup): void {
    group.isUnsettled = false;
    const state = group.waiting === 0 ? IDLE : group.mayLaunch ? WAITING_TO_START : WAITING_TO_FILL;
    for (const unit of group.units) {
      if (unit.isCounted && unit.state !== state) this.simulation.units.setState(unit, state);
    }
  }

  private causeOf(group: UnitGroup, unitClass: UnitClass): number {
    if (group.idle === 0 || (unitClass.compiled.pinned === null && group.isTaken))
      return group.units.some(isDown) ? CAUSE_MACHINE_DOWN : CAUSE_MACHINE;
    if (this.simulation.carriers.isMissing(group.compiled.carrier)) return CAUSE_CARRIER;
    if (!unitClass.mayLaunch) return CAUSE_BATCH;
    if (unitClass.isBlocked) return CAUSE_SHIFT;
    const { work } = unitClass.compiled.phases[0];
    return work === null ? CAUSE_SHIFT : this.simulation.staff.queues[work.queue].cause;
  }
}

function isDown(unit: Unit): boolean {
  return unit.isDown;
}
