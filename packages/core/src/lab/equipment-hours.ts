import { PHASE_WINDOWS_BEGIN, PHASE_WINDOWS_END } from '../kernel/event-calendar.ts';
import type { WorkingWindows } from '../kernel/working-windows.ts';
import { EVENT_EQUIPMENT_COMES, EVENT_EQUIPMENT_GOES } from './events.ts';
import type { Simulation } from './simulation.ts';
import type { UnitGroup } from './unit-group.ts';

/** The hours in which borrowed or shared equipment is there. */
export class EquipmentHours {
  private readonly simulation: Simulation;
  private hours: readonly (WorkingWindows | null)[] = [];

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /** @param hours of each unit group; null where the equipment is always there */
  reset(hours: readonly (WorkingWindows | null)[]): void {
    this.hours = hours;
    const { units } = this.simulation;
    hours.forEach((windows, index) => {
      if (windows === null) return;
      for (const unit of units.groups[index].units) {
        unit.isAway = true;
        units.refresh(unit);
      }
      this.scheduleComing(units.groups[index], windows);
    });
  }

  /** The equipment has come or gone: when it goes or comes next. */
  next(group: UnitGroup, isThere: boolean): void {
    const windows = this.hours[group.compiled.index];
    if (windows === null) return;
    if (!isThere) {
      group.goesAt = Number.POSITIVE_INFINITY;
      group.hoursIndex++;
      this.scheduleComing(group, windows);
      return;
    }
    group.goesAt = windows.ends[group.hoursIndex];
    this.simulation.calendar.schedule(
      group.goesAt,
      PHASE_WINDOWS_END,
      EVENT_EQUIPMENT_GOES,
      group.compiled.index,
      0,
    );
  }

  private scheduleComing(group: UnitGroup, windows: WorkingWindows): void {
    if (group.hoursIndex >= windows.length) return;
    this.simulation.calendar.schedule(
      windows.starts[group.hoursIndex],
      PHASE_WINDOWS_BEGIN,
      EVENT_EQUIPMENT_COMES,
      group.compiled.index,
      0,
    );
  }
}
