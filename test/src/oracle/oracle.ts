import type { DemandStream, DueRule, EquipmentConditions, Lab, PartType } from '@buildweek/model';
import { dispatch } from './dispatch.ts';
import { dueDate } from './due-date.ts';
import { dutyTable } from './duty-table.ts';
import { noteJob, notePerson } from './events.ts';
import type { Floor, Job, OracleEvent, Person } from './floor.ts';
import { first, isOnDuty } from './floor.ts';
import { enterStage } from './flow.ts';
import { launchTimesOf } from './launch.ts';
import { minutes } from './minutes.ts';
import { attendedSince, permissionsOf } from './presence.ts';
import { afterTask, lookAtStanding } from './runs.ts';
import { end, followCalendar } from './tasks.ts';
import {
  afterUpkeep,
  beginChores,
  breakDown,
  endVisits,
  itemsOf,
  noticeStops,
  passMinute,
} from './upkeep.ts';
import { elapsedOf } from './wall-clock.ts';

const WEEK = 7 * 24 * 60;

export interface OracleHistory {
  readonly events: readonly OracleEvent[];
  /** For each job, in the order of arrival, when it ended in milliseconds; null when it did not. */
  readonly finishes: readonly (number | null)[];
  /** From here on, in milliseconds, other histories would be right too; null when there are none. */
  readonly undecidedAt: number | null;
  /** How often each kind of trouble came up. */
  readonly happened: ReadonlyMap<string, number>;
}

/**
 * Plays a tiny lab minute by minute. Slow and simple on purpose: each minute everything is asked anew. All
 * durations must be constants of whole minutes and all jobs dated; people have no other duties, and nothing
 * stands in the lab at first.
 *
 * @param lab the lab as plain data
 * @param weeks when to give up on jobs that never end
 */
export function playMinuteByMinute(lab: Lab, weeks: number): OracleHistory {
  const floor = emptyFloor(lab, weeks);
  const coming = jobsToCome(lab, weeks);
  const total = coming.length;
  for (floor.now = 0; floor.now < weeks * WEEK; floor.now++) {
    if (floor.now > 0) passMinute(floor);
    endWhatEnds(floor);
    endVisits(floor);
    breakDown(floor);
    turnCalendar(floor);
    for (const job of coming) if (job.arrivedAt === floor.now) arrive(floor, job);
    do {
      do {
        endWhatEnds(floor);
        noticeStops(floor);
        lookAtStanding(floor);
        beginChores(floor);
      } while (somethingEnds(floor));
      dispatch(floor);
    } while (somethingEnds(floor));
    if (floor.jobs.length === total && floor.jobs.every((job) => job.finishedAt !== null)) break;
  }
  const finishes = floor.jobs.map((job) => (job.finishedAt === null ? null : job.finishedAt * 60_000));
  return {
    events: floor.events,
    finishes,
    undecidedAt: floor.undecidedAt === null ? null : floor.undecidedAt * 60_000,
    happened: floor.happened,
  };
}

function somethingEnds(floor: Floor): boolean {
  return floor.tasks.some((task) => task.endsAt === floor.now);
}

/** In the order in which it was begun; what begins thereby without any length ends in the same minute. */
function endWhatEnds(floor: Floor): void {
  for (;;) {
    const ending = floor.tasks.filter((task) => task.endsAt === floor.now);
    ending.sort((one, other) => one.startOrder - other.startOrder);
    const [task] = ending;
    if (task === undefined) return;
    end(floor, task);
    if (task.upkeep === null) afterTask(floor, task);
    else afterUpkeep(floor, task);
  }
}

/** Windows end, then windows begin. */
function turnCalendar(floor: Floor): void {
  const changes = floor.people.map((person) => ({
    person,
    before: floor.now > 0 && isOnDuty(person, floor.now - 1),
    now: isOnDuty(person, floor.now),
  }));
  for (const { person, before, now } of changes) if (before && !now) notePerson(floor, 'off duty', person);
  for (const { person, before, now } of changes) if (!before && now) notePerson(floor, 'on duty', person);
  for (const { person } of changes) followCalendar(floor, person);
}

function arrive(floor: Floor, job: Job): void {
  floor.jobs.push(job);
  noteJob(floor, 'job arrives', job);
  const lot = { job, pieces: job.quantity, stageIndex: 0, waitsForRest: false };
  job.lots.push(lot);
  enterStage(floor, { lots: [lot], readyAt: floor.now, readyOrder: 0, key: '' });
}

function emptyFloor(lab: Lab, weeks: number): Floor {
  const people: Person[] = [];
  for (const group of lab.people) {
    const calendar = lab.calendars.find((candidate) => candidate.name === group.calendar);
    if (calendar === undefined) throw new Error(`No calendar is named ${group.calendar}.`);
    if (group.otherDutiesShare !== 0) throw new Error('The oracle knows no other duties.');
    // Two weeks more than are played, so that the windows and closings at the end are known.
    const windowEnds = dutyTable(calendar, lab.clockChanges, weeks + 2);
    for (let number = 1; number <= group.count; number++) {
      const name = `${group.name} ${number}`;
      people.push({ name, number: people.length, group, windowEnds, task: null, overtimeUntil: null });
    }
  }
  const machines = lab.machines
    .flatMap((group) =>
      numbered(group.name, group.count).map((name) => ({ kind: 'machine' as const, name, group })),
    )
    .map((unit, number) => ({
      ...unit,
      material: unit.group.initialMaterial,
      ...inOrder(unit.group, number),
    }));
  const stations = lab.stations
    .flatMap((group) =>
      numbered(group.name, group.count).map((name) => ({ kind: 'station' as const, name, group })),
    )
    .map((unit, number) => ({ ...unit, ...inOrder(unit.group, machines.length + number) }));
  return {
    lab,
    now: 0,
    jobs: [],
    people,
    machines,
    stations,
    units: [...machines, ...stations],
    carriers: [],
    attendedSince: attendedSince(people),
    serviceHours: new Map(
      lab.calendars.map((calendar) => [calendar.name, dutyTable(calendar, lab.clockChanges, weeks + 2)]),
    ),
    permissions: permissionsOf(lab, people, weeks + 2),
    waiting: [],
    tasks: [],
    closings: new Map(),
    launchTimes: new Map(lab.machines.map((group) => [group, launchTimesOf(group, lab.clockChanges, weeks)])),
    order: 0,
    events: [],
    undecidedAt: null,
    happened: new Map(),
  };
}

function inOrder(group: EquipmentConditions, number: number) {
  return {
    number,
    run: null,
    items: itemsOf(group.breakdowns, group.chores),
    down: null,
    chore: null,
    cleaning: null,
    heldCarrier: null,
    lastEndedAt: -1,
  };
}

function numbered(name: string, count: number): string[] {
  return Array.from({ length: count }, (_, index) => `${name} ${index + 1}`);
}

interface Request {
  readonly part: PartType;
  readonly quantity: number;
  readonly rush: boolean;
  readonly arrivedAt: number;
  readonly rule: DueRule;
}

/**
 * All jobs in the order of their numbers. Each stream knows of its next job when the one before has come; of
 * two at the same minute the one that was known of first comes first.
 */
function jobsToCome(lab: Lab, weeks: number): Job[] {
  const next = lab.demand.map((stream, knownSince) => ({ requests: requestsOf(lab, stream), knownSince }));
  const jobs: Job[] = [];
  for (let order = next.length; ; order++) {
    const due = next.filter((stream) => stream.requests.length > 0);
    due.sort(
      (one, other) => arrival(one.requests) - arrival(other.requests) || one.knownSince - other.knownSince,
    );
    const [stream] = due;
    const request = stream?.requests.shift();
    if (stream === undefined || request === undefined) return jobs;
    stream.knownSince = order;
    const { rule, rush, ...said } = request;
    const number = jobs.length;
    const dueAt = dueDate(rule, request.arrivedAt, lab, weeks + 8);
    const rank = { rush: rush ? 0 : 1, due: dueAt ?? Infinity, job: number } as const;
    jobs.push({ number, rank, ...said, dueAt, finishedAt: null, lots: [] });
  }
}

function arrival(requests: readonly Request[]): number {
  return first(requests).arrivedAt;
}

function requestsOf(lab: Lab, stream: DemandStream): Request[] {
  const part = lab.parts.find((candidate) => candidate.name === stream.part);
  if (part === undefined) throw new Error(`No part is named ${stream.part}.`);
  const { arrivals, quantity: usual } = stream;
  if (arrivals.kind !== 'dated') throw new Error('The oracle plays dated jobs.');
  const requests = arrivals.jobs.map((dated) => {
    if (dated.quantity === null && usual.kind !== 'fixed') throw new Error('The oracle draws no quantities.');
    if (dated.rush === null && stream.rushShare !== 0) throw new Error('The oracle draws no rush.');
    const quantity = dated.quantity ?? (usual.kind === 'fixed' ? usual.value : 0);
    const rush = dated.rush ?? false;
    const arrivedAt = elapsedOf(minutes(dated.atHour), lab.clockChanges);
    return { part, quantity, rush, arrivedAt, rule: rush ? stream.rushDue : stream.due };
  });
  // Where the clock is put forward, what is later by the list may be earlier in truth.
  return requests.sort((one, other) => one.arrivedAt - other.arrivedAt);
}
