import type { Breakdown, Chore, Distribution } from '@buildweek/model';
import { noteUnit } from './events.ts';
import type { Floor, Task } from './floor.ts';
import { count } from './floor.ts';
import { lengthOf, minutes } from './minutes.ts';
import { handsOf } from './phases.ts';
import { agesIn, isNoticedAtOnce, isNoticedNow, serviceIsOpen } from './rules.ts';
import { beginCleaning, enterPhase, freeHeldCarrier, giveBackBuild, interruptRun } from './runs.ts';
import { breakOff, makeUpkeepReady } from './tasks.ts';
import type { Unit, UpkeepItem } from './unit.ts';
import { isIdle } from './unit.ts';

/** Machines and stations break down, are repaired and looked after. */

export function itemsOf(breakdowns: readonly Breakdown[], chores: readonly Chore[]): UpkeepItem[] {
  return [
    ...breakdowns.map((breakdown) => newItem(breakdown.name, breakdown, null)),
    ...chores.map((chore) => newItem(chore.name, null, chore)),
  ];
}

function newItem(name: string, breakdown: Breakdown | null, chore: Chore | null): UpkeepItem {
  const item: UpkeepItem = { name, breakdown, chore, left: null, owedSince: null };
  renew(item);
  return item;
}

function renew(item: UpkeepItem): void {
  const between = item.breakdown?.between ?? item.chore?.every;
  if (between === undefined) throw new Error(`${item.name} is neither a breakdown nor a chore.`);
  item.left = minutesOf(between);
  item.owedSince = null;
}

/** A minute has passed: what goes by the clock comes nearer, and by running hours where something has run. */
export function passMinute(floor: Floor): void {
  for (const unit of floor.units) {
    const task = floor.tasks.find((candidate) => candidate.run !== null && candidate.run === unit.run);
    const hasRun = task !== undefined && task.endsAt !== null && agesIn(task.phase);
    for (const item of unit.items) {
      if (item.left === null) continue;
      const byClock = (item.breakdown ?? item.chore)?.by === 'clock';
      if (byClock || hasRun) item.left--;
      if (item.left === 0 && item.chore !== null) {
        item.left = null;
        item.owedSince = floor.now;
      }
    }
    const { down } = unit;
    if (down === null || down.noticedAt === null) continue;
    const repair = down.item.breakdown?.repair;
    if (repair?.kind !== 'service' || !serviceIsOpen(floor, repair.calendar, floor.now - 1)) continue;
    if (down.response > 0) down.response--;
    else if (down.visit > 0) down.visit--;
  }
}

/** What fails in this minute. */
export function breakDown(floor: Floor): void {
  for (const unit of floor.units) {
    for (const item of unit.items) {
      const { breakdown } = item;
      if (breakdown === null || item.left !== 0) continue;
      item.left = null;
      // Whether a machine fails before or after what else ends on it in this minute is left open.
      if (unit.lastEndedAt === floor.now) floor.undecidedAt ??= floor.now;
      if (unit.down !== null) {
        count(floor, 'fails while down');
        continue;
      }
      stop(floor, unit, item, breakdown);
    }
  }
}

function stop(floor: Floor, unit: Unit, item: UpkeepItem, breakdown: Breakdown): void {
  const { repair, effect, by } = breakdown;
  unit.lastEndedAt = floor.now;
  noteUnit(floor, 'breaks down', unit, item.name);
  const isService = repair.kind === 'service';
  const held = unit.run?.present?.phase ?? (unit.chore === null ? 'nothing' : 'a chore');
  count(floor, `breaks down by ${by}, ${effect}, ${repair.kind} repair`);
  count(floor, `breaks down in ${held}`);
  const task = taskOn(floor, unit);
  const somebodyIsAtIt = task !== undefined && task.workers.length > 0;
  if (task?.upkeep != null) breakOff(floor, task);
  unit.chore = null;
  unit.down = {
    item,
    noticedAt: null,
    losesBuild: interruptRun(floor, unit, effect),
    response: isService ? minutesOf(repair.response) : 0,
    visit: isService ? minutesOf(repair.visit) : 0,
  };
  if (isNoticedAtOnce(somebodyIsAtIt)) notice(floor, unit);
}

/** Machines that stand still are seen. */
export function noticeStops(floor: Floor): void {
  for (const unit of floor.units) {
    if (unit.down === null || unit.down.noticedAt !== null) continue;
    if (isNoticedNow(floor, unit.group.noticing)) notice(floor, unit);
    else count(floor, 'is down and nobody knows');
  }
}

function notice(floor: Floor, unit: Unit): void {
  const { down } = unit;
  if (down === null) throw new Error(`${unit.name} is in order.`);
  down.noticedAt = floor.now;
  if (down.losesBuild) giveBackBuild(floor, unit);
  const repair = down.item.breakdown?.repair;
  if (repair?.kind !== 'own') return;
  const hands = { ...handsOf(repair.work), mayPause: true };
  makeUpkeepReady(floor, { unit, item: down.item }, hands, lengthOf(repair.work.duration));
}

/** Visits that are over in this minute. */
export function endVisits(floor: Floor): void {
  for (const unit of floor.units) {
    const { down } = unit;
    if (down === null || down.noticedAt === null || down.item.breakdown?.repair.kind !== 'service') continue;
    if (down.response === 0 && down.visit === 0) bringBack(floor, unit);
  }
}

/** The times until the next failure begin when the repair ends, and those that fell into it begin anew. */
function bringBack(floor: Floor, unit: Unit): void {
  const { down } = unit;
  if (down === null) throw new Error(`${unit.name} is in order.`);
  noteUnit(floor, 'is repaired', unit, down.item.name);
  unit.lastEndedAt = floor.now;
  unit.down = null;
  for (const item of unit.items) if (item.breakdown !== null && item.left === null) renew(item);
  if (unit.cleaning !== null) {
    beginCleaning(floor, unit, unit.cleaning);
    return;
  }
  freeHeldCarrier(floor, unit);
  if (unit.run !== null) enterPhase(floor, unit.run);
}

/** What is owed is done as soon as a unit is free for it, the longest owed first. */
export function beginChores(floor: Floor): void {
  for (const unit of floor.units) {
    if (!isIdle(unit)) continue;
    const owed = unit.items.filter((item) => item.owedSince !== null);
    owed.sort((one, other) => (one.owedSince ?? 0) - (other.owedSince ?? 0));
    const [item, next] = owed;
    // Which of two that fall due in the same minute comes first is left open.
    if (next !== undefined && next.owedSince === item?.owedSince) floor.undecidedAt ??= floor.now;
    if (item?.chore == null) continue;
    unit.chore = item;
    const { work, duration } = item.chore;
    const length = work?.duration ?? duration;
    if (length === null) throw new Error(`${item.name} takes no time.`);
    count(floor, `chore by ${item.chore.by}, ${work === null ? 'by itself' : 'by hand'}`);
    if (work === null) noteUnit(floor, 'chore starts', unit, item.name);
    makeUpkeepReady(floor, { unit, item }, work === null ? null : handsOf(work), lengthOf(length));
  }
}

/** A repair, a chore or the cleaning after a failed build is over. */
export function afterUpkeep(floor: Floor, task: Task): void {
  if (task.upkeep === null) throw new Error('A step of a job is no upkeep.');
  const { unit, item } = task.upkeep;
  if (item.breakdown !== null) {
    bringBack(floor, unit);
    return;
  }
  unit.lastEndedAt = floor.now;
  if (unit.cleaning?.item === item) {
    unit.cleaning = null;
    freeHeldCarrier(floor, unit);
    return;
  }
  noteUnit(floor, 'chore ends', unit, item.name);
  unit.chore = null;
  renew(item);
}

function taskOn(floor: Floor, unit: Unit): Task | undefined {
  return floor.tasks.find(
    (task) => task.upkeep?.unit === unit || (task.run !== null && task.run === unit.run),
  );
}

function minutesOf(distribution: Distribution): number {
  if (distribution.kind !== 'constant')
    throw new Error(`The oracle plays constants, not ${distribution.kind}.`);
  return minutes(distribution.value);
}
