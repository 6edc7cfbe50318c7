import type {
  AttendedWork,
  Duration,
  HourSpan,
  Lab,
  LaunchRule,
  MachineGroup,
  PartType,
  PeopleGroup,
  Stage,
} from '@buildweek/model';
import { NO_CHANGES, NO_CONDITIONS } from '@buildweek/model';
import type { OracleEvent } from './floor.ts';

/** Pieces that hand-written and generated labs are put together from. */

export const STAGE = {
  level: 'job',
  move: 'per job',
  emptiesCarrier: false,
  maximumWaitHours: null,
  rejects: null,
} as const;

export const AT_ONCE: LaunchRule = {
  fullShare: null,
  waitedHours: null,
  beforeClosing: false,
  fixedHours: null,
  promiseAtRisk: false,
  preferAttendedEnd: false,
};

export function takes(minutes: number, typicalMinutes = minutes): Duration {
  return { distribution: { kind: 'constant', value: minutes / 60 }, typicalHours: typicalMinutes / 60 };
}

export function byHand(skill: string, minutes: number, more: Partial<AttendedWork> = {}): AttendedWork {
  return { skill, persons: 1, duration: takes(minutes), pausable: false, ...more };
}

export function bench(name: string, work: AttendedWork): Stage {
  return { kind: 'work', name, work, basis: 'job', ...STAGE };
}

export function build(machineGroup: string): Stage {
  return { kind: 'build', name: 'build', machineGroup, ...STAGE };
}

/** Hours since Monday 00:00 of the first week. */
export function hour(day: number, clock: string): number {
  const [hours, minutes] = clock.split(':').map(Number);
  return day * 24 + Number(hours) + Number(minutes) / 60;
}

export function onDays(days: readonly number[], ...windows: (readonly [string, string])[]): HourSpan[] {
  return days.flatMap((day) =>
    windows.map(([from, to]) => {
      const fromHour = hour(day, from);
      const toHour = hour(day, to);
      return { fromHour, toHour: toHour > fromHour ? toHour : toHour + 24 };
    }),
  );
}

export function people(name: string, skills: string[], more: Partial<PeopleGroup> = {}): PeopleGroup {
  return {
    name,
    count: 1,
    calendar: 'day',
    skills,
    otherDutiesShare: 0,
    graceHours: 0,
    leave: [],
    absence: null,
    ...more,
  };
}

export function machines(name: string, more: Partial<MachineGroup> = {}): MachineGroup {
  return {
    name,
    process: 'other',
    count: 1,
    capacity: 1,
    mostJobs: null,
    shaped: null,
    prepare: null,
    setUp: null,
    materialChanges: [],
    warmUp: null,
    firstLayers: null,
    coolDown: null,
    unload: null,
    launch: AT_ONCE,
    carrier: null,
    initialMaterial: null,
    failure: null,
    ...NO_CONDITIONS,
    ...more,
  };
}

/** One part type with its stages, and the hours at which single-piece jobs of it arrive. */
export function labOf(
  stages: readonly Stage[],
  arrivals: readonly number[],
  windows: readonly HourSpan[],
  more: Partial<Lab> = {},
  partMore: Partial<PartType> = {},
): Lab {
  const part: PartType = {
    name: 'part',
    route: 'route',
    material: 'grey',
    settings: '',
    space: 1,
    print: null,
    stages,
    ...partMore,
  };
  return {
    name: 'small lab',
    startDate: '2025-01-06',
    clockChanges: [],
    calendars: [{ name: 'day', weekly: windows, closedDays: [], extra: [] }],
    labCalendar: 'day',
    people: [people('technicians', ['all'])],
    machines: [],
    stations: [],
    carriers: [],
    parts: [part],
    demand: [
      {
        name: 'part',
        part: 'part',
        arrivals: { kind: 'dated', jobs: arrivals.map((atHour) => ({ atHour, quantity: 1, rush: false })) },
        quantity: { kind: 'fixed', value: 1 },
        rushShare: 0,
        due: { kind: 'none' },
        rushDue: { kind: 'none' },
        changes: NO_CHANGES,
        sentOut: null,
      },
    ],
    dispatch: {
      order: ['machine', 'station', 'bench'],
      fitOn: 'typical',
      within: 'promise',
      rushInterrupts: false,
    },
    initialState: { jobs: [], machines: [] },
    deadlines: [],
    ...more,
  };
}

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** An event as a line such as `fri 15:30 step starts job 0 build set-up, 1 pieces, on resin 1, by staff 1`. */
export function lineOf(event: Omit<OracleEvent, 'what'> & { readonly what: string }): string {
  const minutes = Math.floor(event.time / 60_000);
  const two = (value: number): string => String(value).padStart(2, '0');
  const day = Math.floor(minutes / 1440);
  const seconds = event.time % 60_000 === 0 ? '' : `:${two((event.time % 60_000) / 1000)}`;
  const week = day >= 7 ? `week ${Math.floor(day / 7) + 1} ` : '';
  const clock = `${week}${DAYS[day % 7]} ${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}${seconds}`;
  const words = [`${clock} ${event.what}`];
  if (event.job >= 0)
    words.push(` job ${event.job}, ${[event.part, event.stage, event.phase].filter(isWord).join(' ')}`);
  if (event.job < 0 && event.phase !== null) words.push(` ${event.phase}`);
  if (event.pieces > 0) words.push(`, ${event.pieces} pieces`);
  if (event.unit !== null) words.push(`, on ${event.unit}`);
  if (event.persons.length > 0) words.push(`, by ${event.persons.join(' and ')}`);
  return words.join('');
}

function isWord(word: string | null): word is string {
  return word !== null;
}
