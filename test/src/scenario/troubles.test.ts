import { createSimulator, type History } from '@buildweek/core';
import { MACHINE_STATES, PERSON_STATES, STATION_STATES, WAIT_CAUSES } from '@buildweek/results';
import { readScenario } from '@buildweek/scenario';
import { describe, expect, it } from 'vitest';

/** A small lab in which nothing goes wrong. */
const CALM = `buildweek: 1
name: calm lab
starts: 2027-03-01
hours:
  day: { mon-fri: 08:00-12:00 12:30-16:30 }
people:
  technicians: { count: 2, skills: [run machines, hand work] }
machines:
  resin: { count: 3, set-up: 10 min, unload: 5 min, start: at once }
stations:
  cure: { takes: 30 min per batch, load: 3 min, holds: 20 parts }
routes:
  resin part:
    - prepare file: { by: hand work, takes: 15 min per job, may pause: yes }
    - build: { on: resin }
    - cure: { on: cure }
    - inspect: { by: hand work, takes: 4 min per part, may pause: yes }
parts:
  ring: { route: resin part, fits: 6 per build, print: 6 h per build }
demand:
  ring: { jobs: 12 per week, pieces: 2 to 6, promise: 3 working days, rush: 20 % }
`;

/** Plays a year of the calm lab, with one piece of its text replaced. */
function played(from: string, to: string, more = (text: string): string => text): History {
  if (!CALM.includes(from)) throw new Error(`The calm lab does not say "${from}".`);
  const reading = readScenario(more(CALM.replace(from, () => to)), 'lab.yaml');
  if (reading.kind === 'problems') {
    throw new Error(reading.problems.map((problem) => `${problem.line}: ${problem.message}`).join('\n'));
  }
  const history = createSimulator(reading.lab).simulate({
    seed: 'troubles',
    replication: 0,
    ignoredWeeks: 0,
    weeks: 52,
    capWeeks: 13,
    trace: false,
    queueWaits: false,
  });
  expect(history.laws.jobArea).toBe(history.laws.jobStays);
  expect(Math.max(history.laws.machineImbalance, history.laws.personImbalance)).toBe(0);
  return history;
}

const calm = (): History => played('calm lab', 'calm lab');

function sum(values: Iterable<number>): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

function hoursIn(history: History, kind: 'machines' | 'stations', state: string): number {
  const states: readonly string[] = kind === 'machines' ? MACHINE_STATES : STATION_STATES;
  return sum(history[kind].map((unit) => unit.timeInState[states.indexOf(state)] ?? 0)) / 3_600_000;
}

function waitedFor(history: History, cause: (typeof WAIT_CAUSES)[number]): number {
  const position = WAIT_CAUSES.indexOf(cause);
  return sum(
    history.partHours.flatMap((part) =>
      [...part.waits].filter((_, i) => i % WAIT_CAUSES.length === position),
    ),
  );
}

function offHours(history: History): number {
  const off = PERSON_STATES.indexOf('off');
  const times = history.people.flatMap((group) =>
    [...group.timeInState].filter((_, index) => index % PERSON_STATES.length === off),
  );
  return sum(times) / 3_600_000;
}

const count = (history: History, what: 'failures' | 'breakdowns'): number =>
  sum([...history.machines, ...history.stations].map((unit) => unit[what]));

const repeated = (history: History): number => sum(history.partHours.map((part) => part.repeatedPieces));

describe('what a scenario says of troubles happens when it is played', () => {
  it('a lab that says nothing of them has none', () => {
    const history = calm();
    expect(count(history, 'breakdowns') + count(history, 'failures') + repeated(history)).toBe(0);
    for (const state of ['down', 'maintenance', 'test print', 'off']) {
      expect(hoursIn(history, 'machines', state)).toBe(0);
    }
    expect(waitedFor(history, 'requester')).toBe(0);
    expect(sum(history.jobClasses.map((one) => one.cancelled))).toBe(0);
  });

  it('machines break down and are repaired by the people of the lab', () => {
    const history = played(
      'set-up: 10 min',
      'breaks down: { every: about 60 h of running, repair: 2 h }, set-up: 10 min',
    );
    expect(count(history, 'breakdowns')).toBeGreaterThan(20);
    expect(hoursIn(history, 'machines', 'down')).toBeGreaterThan(2 * count(history, 'breakdowns'));
    expect(history.people[0]?.stages).toContain('resin: repair');
    expect(repeated(history)).toBeGreaterThan(0);
  });

  it('a build that goes on after the repair is not built again', () => {
    const history = played(
      'set-up: 10 min',
      'breaks down: { every: about 60 h of running, build: goes on, service: { response: 8 h, takes: 2 h, hours: day } }, set-up: 10 min',
    );
    expect(count(history, 'breakdowns')).toBeGreaterThan(20);
    // A day of the service has eight hours, so that each breakdown lasts a day and a quarter of its hours at least.
    expect(hoursIn(history, 'machines', 'down')).toBeGreaterThan(20 * count(history, 'breakdowns'));
    expect(repeated(history)).toBe(0);
  });

  it('stations break down too', () => {
    const history = played(
      'load: 3 min',
      'load: 3 min, breaks down: { every: about 30 h of running, repair: 1 h }',
    );
    expect(count(history, 'breakdowns')).toBeGreaterThan(3);
    expect(hoursIn(history, 'stations', 'down')).toBeGreaterThan(3);
  });

  it('builds fail in the stated share', () => {
    const history = played('set-up: 10 min', 'fails: 20 % of builds, set-up: 10 min');
    const builds = sum(history.machines.map((machine) => machine.runs));
    // Builds that failed are not counted among those that ended.
    const share = count(history, 'failures') / (count(history, 'failures') + builds);
    expect(Math.abs(share - 0.2)).toBeLessThan(4 * Math.sqrt((0.2 * 0.8) / builds));
  });

  it('maintenance and test prints take their hours', () => {
    const history = played(
      'set-up: 10 min',
      'maintenance: { every: 100 h of running, takes: 1 h }, test prints: { every: 2 weeks by the clock, takes: 3 h }, set-up: 10 min',
    );
    const running = hoursIn(history, 'machines', 'print');
    const dues = hoursIn(history, 'machines', 'maintenance');
    // Each machine may owe its last one, and one that stands unattended overnight counts as long as it is held.
    expect(dues).toBeGreaterThan(running / 100 - 3);
    // 26 fortnights a year, each three hours after the end of the one before.
    expect(hoursIn(history, 'machines', 'test print')).toBeGreaterThan(3 * 24 * 3);
    expect(hoursIn(history, 'machines', 'test print')).toBeLessThanOrEqual(3 * 26 * 3);
  });

  it('borrowed machines are away outside their hours, unless a build that has begun is in them', () => {
    const history = played('set-up: 10 min', 'available: borrowed, set-up: 10 min', (text) =>
      text
        .replace('hours:\n', 'hours:\n  borrowed: { mon-fri: 08:00-20:00 }\n')
        .replace('print: 6 h', 'print: 2 h'),
    );
    const away = 3 * 52 * (168 - 60);
    expect(hoursIn(history, 'machines', 'off')).toBeLessThanOrEqual(away);
    expect(hoursIn(history, 'machines', 'off')).toBeGreaterThan(0.9 * away);
  });

  it('without permission to run alone nothing is printed at night', () => {
    const history = played('set-up: 10 min', 'runs alone: never, set-up: 10 min', (text) =>
      text.replace('print: 6 h', 'print: 3 h'),
    );
    const alone = played('calm lab', 'calm lab', (text) => text.replace('print: 6 h', 'print: 3 h'));
    const waits = (one: History): number => hoursIn(one, 'machines', 'waiting to be unloaded');
    // Prints end while somebody is there; only one that ends as the last person goes stands until the morning.
    expect(waits(alone)).toBeGreaterThan(500);
    expect(waits(history)).toBeLessThan(waits(alone) / 10);
  });

  it('rejected parts go round again in the stated share', () => {
    const history = played(
      'per part, may pause: yes }',
      'per part, may pause: yes, rejects: 10 % back to build }',
    );
    const parts = sum(history.weeks.finishedParts);
    // Of all inspected parts a tenth is rejected, so that there are 1/9 rejects for each good part.
    expect(Math.abs(repeated(history) / parts - 1 / 9)).toBeLessThan(4 * Math.sqrt(0.1 / parts));
  });

  it('parts that wait longer than they should are counted', () => {
    const history = played(
      'per part, may pause: yes }',
      'per part, may pause: yes, at most: 10 min after cure }',
    );
    expect(sum(history.partHours.flatMap((part) => [...part.waitsTooLong]))).toBeGreaterThan(0);
  });

  it('jobs wait for their requesters', () => {
    const history = played(
      '    - prepare file:',
      '    - ask: { ask requester: 50 % of jobs, takes: 10 h }\n    - prepare file:',
    );
    const jobs = sum(history.partHours.map((part) => part.finishedJobs));
    // Half of the jobs, ten hours each: a standard deviation of five hours.
    const mean = waitedFor(history, 'requester') / 3_600_000 / jobs;
    expect(Math.abs(mean - 5)).toBeLessThan((4 * 5) / Math.sqrt(jobs));
  });

  it('jobs are withdrawn in the stated share, and revised ones are built again', () => {
    const withdrawn = played('pieces: 2 to 6', 'pieces: 2 to 6, cancels: 20 % after 10 min');
    const arrived = sum(withdrawn.jobClasses.map((one) => one.arrived));
    const share = sum(withdrawn.jobClasses.map((one) => one.cancelled)) / arrived;
    expect(Math.abs(share - 0.2)).toBeLessThan(4 * Math.sqrt((0.2 * 0.8) / arrived));
    const revised = played('pieces: 2 to 6', 'pieces: 2 to 6, revises: { chance: 20 %, after: 6 h }');
    expect(sum(revised.machines.map((machine) => machine.pieces))).toBeGreaterThan(
      1.05 * sum(calm().machines.map((machine) => machine.pieces)),
    );
  });

  it('an endless backlog keeps its jobs in the lab', () => {
    const history = played('jobs: 12 per week', 'kept in the lab: 4 jobs');
    expect(Math.max(...history.weeks.jobsInLab.map((jobs) => Math.abs(jobs - 4)))).toBeLessThan(1e-9);
  });

  it('people on leave are off in all hours of their leave', () => {
    const history = played('count: 2,', 'count: 2, leave: { 2: 2027-04-05 to 2027-04-16 },');
    expect(offHours(history) - offHours(calm())).toBeCloseTo(10 * 8, 9);
  });

  it('people are absent in the stated share of their days', () => {
    const history = played('count: 2,', 'count: 2, absent: 10 % of days, 1 to 3 days at a time,');
    const hours = 2 * 52 * 40;
    const share = (offHours(history) - offHours(calm())) / hours;
    // Days of a spell are missed together: the variance is that of single days times the mean spell, about two.
    expect(Math.abs(share - 0.1)).toBeLessThan(4 * Math.sqrt((0.1 * 0.9 * 3) / (2 * 52 * 5)));
  });
});
