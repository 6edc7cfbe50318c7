import { createStream } from '@buildweek/core';
import { type Duration, type Lab, NO_CHANGES, NO_CONDITIONS, type Stage } from '@buildweek/model';

/** Name of the demand and of the part of what is asked for. */
export const REQUEST = 'new request';
/** The part that it is alike, and that the lab makes all the time. */
const USUAL = 'usual part';

const DAY = [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 8, toHour: day * 24 + 16 }));
const HOURS_A_WEEK = 40;
const STAGE = {
  level: 'job',
  move: 'per job',
  emptiesCarrier: false,
  maximumWaitHours: null,
  rejects: null,
} as const;

/** A lab of its own for each repetition, and what is asked of it. */
export interface RandomLab {
  /** Without the request; nothing stands in it. */
  readonly lab: Lab;
  readonly quantity: number;
  /** Weeks that it has been working for when it is asked. */
  readonly weeksBefore: number;
}

/**
 * A small lab with numbers of its own: one to three technicians, one or two groups of one to three machines, durations
 * of several families, so many jobs that people or machines are busy half to nine tenths of their time. Everything is
 * left out that its state on a Monday at midnight would not tell whole: clocks that run since a job came, repairs.
 */
export function randomLab(seed: string): RandomLab {
  const uniform = createStream(seed, 0, 'random lab', '');
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  const whole = (low: number, high: number): number => Math.min(high, Math.floor(between(low, high + 1)));
  const technicians = whole(1, 3);
  const capacity = whole(4, 12);
  const machines = whole(1, 3);
  const isSplit = uniform() < 0.4;
  const prepare = duration(uniform, between(0.2, 0.8));
  const print = between(2, 9);
  const sand = duration(uniform, between(0.1, 0.4));
  const inspect = duration(uniform, between(0.1, 0.4));
  const hands = (what: Duration, pausable: boolean) => ({
    skill: 'hands',
    persons: 1,
    duration: what,
    pausable,
  });
  const route: readonly Stage[] = [
    { kind: 'work', name: 'prepare', work: hands(prepare, false), basis: 'job', ...STAGE },
    { kind: 'build', name: 'build', machineGroup: 'printers', ...STAGE },
    {
      kind: 'wait',
      name: 'dry',
      duration: duration(uniform, between(1, 6)),
      requesterChance: null,
      ...STAGE,
    },
    { kind: 'work', name: 'sand', work: hands(sand, true), basis: 'part', ...STAGE },
    { kind: 'work', name: 'inspect', work: hands(inspect, true), basis: 'job', ...STAGE },
  ];
  const most = 4;
  const pieces = (1 + most) / 2;
  const handsPerJob = prepare.typicalHours + pieces * sand.typicalHours + inspect.typicalHours + 0.4;
  const byPeople = (technicians * HOURS_A_WEEK) / handsPerJob;
  const byMachines = (machines * (isSplit ? 2 : 1) * 100) / print;
  const jobsPerWeek = between(0.5, 0.9) * Math.min(byPeople, byMachines);
  const shared = { route: 'made here', material: 'grey', settings: '', space: 1, stages: route };
  const typed = {
    kind: 'typed' as const,
    perBuild: duration(uniform, print),
    perPart: duration(uniform, 0.2),
  };
  const parts = [USUAL, REQUEST].map((name) => ({ ...shared, name, print: typed }));
  const demand = parts.map(({ name }) => ({
    name,
    part: name,
    arrivals:
      name === REQUEST
        ? { kind: 'dated' as const, jobs: [] }
        : {
            kind: 'poisson' as const,
            perWeek: jobsPerWeek,
            profile: DAY.map((span) => ({ ...span, weight: 1 })),
            growthPerMonth: 0,
            jobsPerArrival: { kind: 'fixed' as const, value: 1 },
          },
    quantity: { kind: 'uniform' as const, low: 1, high: most },
    rushShare: 0.15,
    due: { kind: 'working days' as const, days: whole(2, 5), cutOffHour: 14 },
    rushDue: { kind: 'working days' as const, days: 1, cutOffHour: 14 },
    changes: NO_CHANGES,
    sentOut: null,
  }));
  const lab: Lab = {
    name: 'a lab of its own',
    startDate: '2027-03-01',
    clockChanges: [],
    calendars: [{ name: 'day', weekly: DAY, closedDays: [], extra: [] }],
    labCalendar: 'day',
    people: [
      {
        name: 'technicians',
        count: technicians,
        calendar: 'day',
        skills: ['hands'],
        otherDutiesShare: 0,
        graceHours: 0,
        leave: [],
        absence: null,
      },
    ],
    machines: [
      {
        name: 'printers',
        process: 'other',
        count: machines * (isSplit ? 2 : 1),
        capacity: isSplit ? Math.ceil(capacity / 2) + 2 : capacity,
        mostJobs: null,
        shaped: null,
        prepare: null,
        setUp: hands(duration(uniform, 0.2), false),
        materialChanges: [],
        warmUp: null,
        coolDown: null,
        unload: hands(duration(uniform, 0.2), false),
        launch: {
          fullShare: 0,
          waitedHours: null,
          beforeClosing: false,
          fixedHours: null,
          promiseAtRisk: false,
          preferAttendedEnd: false,
        },
        carrier: null,
        initialMaterial: 'grey',
        firstLayers: null,
        failure: null,
        ...NO_CONDITIONS,
      },
    ],
    stations: [],
    carriers: [],
    parts,
    demand,
    dispatch: {
      order: ['machine', 'station', 'bench'],
      fitOn: 'typical',
      within: 'promise',
      rushInterrupts: false,
    },
    initialState: { jobs: [], machines: [] },
    deadlines: [],
  };
  return { lab, quantity: whole(1, most), weeksBefore: whole(3, 6) };
}

/** One of several families with a mean. */
function duration(uniform: () => number, mean: number): Duration {
  const kinds = [
    { kind: 'exponential' as const, mean },
    { kind: 'uniform' as const, low: 0.4 * mean, high: 1.6 * mean },
    { kind: 'pert' as const, low: 0.3 * mean, mode: 0.8 * mean, high: 2.5 * mean },
  ];
  return {
    distribution: kinds[Math.floor(uniform() * kinds.length)] ?? { kind: 'exponential', mean },
    typicalHours: mean,
  };
}
