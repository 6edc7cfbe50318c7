import { toMilliseconds } from '../kernel/clock.ts';
import { PHASE_ENDS, PHASE_TIMERS } from '../kernel/event-calendar.ts';
import type { Sampler } from '../kernel/sampler.ts';
import { createStream, type Stream } from '../kernel/streams.ts';
import {
  EVENT_BREAKDOWN_NOTICED,
  EVENT_BREAKS_DOWN,
  EVENT_CHORE_DUE,
  EVENT_CHORE_ENDS,
  EVENT_REPAIRED,
} from './events.ts';
import { afterOpenTime } from './presence.ts';
import type { Simulation } from './simulation.ts';
import { TASK_CHORE, TASK_REPAIR, type Task } from './task.ts';
import type { Unit } from './unit.ts';
import { UpkeepItem } from './upkeep-item.ts';

/** Breakdowns and their repair, planned maintenance and test prints, of every machine and station by itself. */
export class Upkeep {
  private readonly simulation: Simulation;
  private readonly items: readonly UpkeepItem[];
  private readonly itemsOfUnit: readonly (readonly UpkeepItem[])[];

  constructor(simulation: Simulation) {
    this.simulation = simulation;
    const { compiled, units } = simulation;
    const items: UpkeepItem[] = [];
    this.itemsOfUnit = units.units.map((unit) => {
      const { breakdowns, chores } = compiled.unitGroups[unit.group].conditions;
      const first = items.length;
      for (const breakdown of breakdowns) items.push(new UpkeepItem(items.length, unit, breakdown, null));
      for (const chore of chores) items.push(new UpkeepItem(items.length, unit, null, chore));
      return items.slice(first);
    });
    this.items = items;
  }

  /** Nothing of it happens until it is reset. */
  quieten(): void {
    for (const item of this.items) {
      item.dueSince = -1;
      item.isMissed = false;
      item.stamp++;
    }
  }

  reset(): void {
    const { settings } = this.simulation;
    for (const item of this.items) {
      const open = (purpose: string): Stream =>
        createStream(settings.seed, settings.replication, `${purpose}: ${item.name}`, item.unit.name);
      item.gapStream.stream = open('time between');
      item.workStream.stream = open('repair or work');
      item.visitStream.stream = open('visit');
      item.dueSince = -1;
      item.isMissed = false;
      item.stamp++;
      this.renew(item);
    }
  }

  /** Something begins to run for so many milliseconds: whatever goes by running hours may fall into it. */
  runningBegins(unit: Unit, duration: number): void {
    const { calendar, now } = this.simulation;
    for (const item of this.itemsOfUnit[unit.index]) {
      if (item.breakdown !== null && item.runningLeft < duration) {
        calendar.schedule(
          now + Math.max(0, item.runningLeft),
          PHASE_ENDS,
          EVENT_BREAKS_DOWN,
          item.id,
          item.stamp,
        );
      }
    }
  }

  /** So many milliseconds of running are over. */
  runningStops(unit: Unit, elapsed: number): void {
    for (const item of this.itemsOfUnit[unit.index]) {
      if (!item.byRunningHours) continue;
      item.runningLeft -= elapsed;
      if (item.breakdown !== null) item.stamp++;
      else if (item.runningLeft <= 0 && item.dueSince < 0)
        item.dueSince = this.simulation.now + item.runningLeft;
    }
  }

  breaksDown(id: number, stamp: number): void {
    const item = this.items[id];
    if (item.stamp !== stamp) return;
    const { unit } = item;
    if (unit.isDown) {
      item.isMissed = true;
      return;
    }
    const { runs, presence, calendar, compiled, now, tracer, recorder } = this.simulation;
    // Whoever is at work on it sees it stop.
    const isSeen = unit.task !== null && !unit.task.isWaiting;
    unit.isDown = true;
    unit.downSince = now;
    tracer?.equipment('breaks down', unit, item.name);
    recorder.breakdown(unit, now);
    runs.interrupt(unit, (item.breakdown as NonNullable<UpkeepItem['breakdown']>).losesBuild);
    item.stamp++;
    const { noticing } = compiled.unitGroups[unit.group].conditions;
    const noticedAt = isSeen ? now : presence.noticedAt(noticing, now);
    if (noticedAt === now) this.noticed(item.id, item.stamp);
    else calendar.schedule(noticedAt, PHASE_TIMERS, EVENT_BREAKDOWN_NOTICED, item.id, item.stamp);
  }

  noticed(id: number, stamp: number): void {
    const item = this.items[id];
    if (item.stamp !== stamp) return;
    const { tasks, runs, calendar, now } = this.simulation;
    const breakdown = item.breakdown as NonNullable<UpkeepItem['breakdown']>;
    runs.giveBackLost(item.unit);
    if (breakdown.ownRepair !== null) {
      const duration = sample(breakdown.ownRepair.sampler, item.workStream.stream);
      tasks.enqueue(tasks.createUpkeep(breakdown.ownRepair, item, duration, TASK_REPAIR));
      return;
    }
    const hours = this.simulation.serviceWindows(breakdown.serviceCalendar);
    const response = sample(breakdown.response as Sampler, item.workStream.stream);
    const visit = sample(breakdown.visit as Sampler, item.visitStream.stream);
    const repairedAt = afterOpenTime(hours, afterOpenTime(hours, now, response), visit);
    calendar.schedule(repairedAt, PHASE_ENDS, EVENT_REPAIRED, item.id, item.stamp);
  }

  repaired(id: number, stamp: number): void {
    const item = this.items[id];
    if (item.stamp === stamp) this.bringBack(item);
  }

  choreDue(id: number, stamp: number): void {
    const item = this.items[id];
    if (item.stamp !== stamp) return;
    item.dueSince = this.simulation.now;
    this.simulation.units.refresh(item.unit);
  }

  choreEnds(id: number, stamp: number): void {
    const item = this.items[id];
    if (item.stamp === stamp) this.finishChore(item);
  }

  /** A chore that waits for the unit to be free; the one that fell due first. */
  dueChore(unit: Unit): UpkeepItem | null {
    let first: UpkeepItem | null = null;
    for (const item of this.itemsOfUnit[unit.index]) {
      if (item.dueSince >= 0 && (first === null || item.dueSince < first.dueSince)) first = item;
    }
    return first;
  }

  beginChore(item: UpkeepItem): void {
    const { tasks, calendar, now, tracer } = this.simulation;
    const chore = item.chore as NonNullable<UpkeepItem['chore']>;
    item.unit.chore = item;
    if (chore.work !== null) {
      tasks.enqueue(
        tasks.createUpkeep(chore.work, item, sample(chore.work.sampler, item.workStream.stream), TASK_CHORE),
      );
      return;
    }
    tracer?.equipment('chore starts', item.unit, item.name);
    const duration = sample(chore.duration as Sampler, item.workStream.stream);
    calendar.schedule(now + duration, PHASE_ENDS, EVENT_CHORE_ENDS, item.id, item.stamp);
  }

  /** A chore stops because the unit broke down; it is still owed. */
  breakOffChore(unit: Unit): void {
    const item = unit.chore;
    if (item === null) return;
    unit.chore = null;
    item.stamp++;
    if (unit.task !== null) this.simulation.tasks.abandon(unit.task);
  }

  taskEnds(task: Task): void {
    const item = task.upkeep as UpkeepItem;
    if (task.purpose === TASK_REPAIR) this.bringBack(item);
    else this.finishChore(item);
  }

  private bringBack(item: UpkeepItem): void {
    const { runs, tracer, units } = this.simulation;
    const { unit } = item;
    tracer?.equipment('is repaired', unit, item.name);
    unit.isDown = false;
    units.groups[unit.group].isUnsettled = true;
    this.renew(item);
    for (const other of this.itemsOfUnit[unit.index]) {
      if (other.isMissed) this.renew(other);
    }
    runs.resume(unit);
  }

  private finishChore(item: UpkeepItem): void {
    const { units, tracer } = this.simulation;
    tracer?.equipment('chore ends', item.unit, item.name);
    item.unit.chore = null;
    item.dueSince = -1;
    this.renew(item);
    units.refresh(item.unit);
  }

  /** Draws when the item comes next, from now on. */
  private renew(item: UpkeepItem): void {
    const { calendar, now } = this.simulation;
    item.isMissed = false;
    item.stamp++;
    const sampler = item.breakdown?.between ?? (item.chore as NonNullable<UpkeepItem['chore']>).every;
    const gap = sample(sampler, item.gapStream.stream);
    if (item.byRunningHours) {
      item.runningLeft = gap;
      return;
    }
    item.runningLeft = Number.POSITIVE_INFINITY;
    if (item.breakdown !== null)
      calendar.schedule(now + gap, PHASE_ENDS, EVENT_BREAKS_DOWN, item.id, item.stamp);
    else calendar.schedule(now + gap, PHASE_TIMERS, EVENT_CHORE_DUE, item.id, item.stamp);
  }
}

function sample(sampler: Sampler, stream: Stream | null): number {
  return toMilliseconds(sampler.sample(stream === null ? 0.5 : stream()));
}
