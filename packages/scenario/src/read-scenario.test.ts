import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { edited, PLAIN_LAB } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

function labOf(text: string): Lab {
  const reading = readScenario(text, 'lab.yaml');
  if (reading.kind === 'problems') {
    throw new Error(reading.problems.map((problem) => `${problem.line}: ${problem.message}`).join('\n'));
  }
  return reading.lab;
}

/** A lab that uses every key of the format. */
const EVERYTHING = `
buildweek: 1
name: everything
starts: 2027-03-01
zone: Europe/Lisbon
simulate: { weeks: 8, ignored weeks: 2, weeks to finish: 4, seed: 7, precision: 5 % of p90 lead time, at most: 400, level: 90 % }
hours:
  day: { mon-fri: 08:00-12:00 12:30-16:30, closed: 2027-03-05, extra: [2027-03-06 08:00-12:00] }
  night: { mon-thu: 22:00-06:00, sun: 22:00-06:00 }
  closed: [2027-03-19, 2027-12-24 to 2027-12-26]
lab hours: day
cut-off: 14:00
people:
  technicians: { count: 2, hours: day, skills: [run machines, hand work], other duties: 10 %, grace: 15 min }
  guard: { hours: night, skills: run machines }
  robot: { hours: always, skills: stacking }
machines:
  powder:
    process: PBF
    count: 2
    holds: 100 parts
    by: run machines
    prepare: { by: hand work, takes: 10 min, people: 2 }
    set-up: { takes: 20 min, may pause: yes }
    material change:
      - { from: white, to: black, takes: 20 min }
      - { to: white, takes: 1 h, attended: no }
      - { takes: 30 min }
    loaded: white
    warm-up: 1 h
    cool-down: { takes: 2 to 6 h, usually 3, where: outside }
    unload: 5 min
    start: when 80 % full or after 10 h or mon and wed at 14:00 or when a promise is at risk or before closing preferring an attended end
    carrier: build units
carriers: { build units: 3 }
stations:
  unpacker: { count: 2, holds: 1 build, takes: 30 min per build, by: hand work, may pause: yes, people: 2 }
  blaster: { holds: 40 parts, start: when 50 % full or after 2 h, takes: 10 min per batch, load: { by: stacking, takes: 2 min }, unload: 3 min }
  oven: { holds: 3 jobs }
routes:
  powder part:
    - build: { on: powder, move: per build }
    - cool on the shelf: { wait: 20 min, level: build }
    - unpack: { on: unpacker, empties carrier: yes }
    - blast: { on: blaster }
    - harden: { on: oven, takes: 1 h per job, unload: { by: hand work, takes: 1 min }, attended: yes, by: hand work }
    - sand: { by: hand work, takes: 5 min per part, people: 2, may pause: yes }
parts:
  cap: { route: powder part, material: white, settings: fine, fits: 50 per build, print: 5 h per build plus 2 min per part }
  box:
    route: powder part
    material: black
    space: 10 % of a build
    print: 30 min per part
    times: { sand: 1 to 4 min per part usually 2, blast: { takes: 15 min, load: 4 min }, harden: 2 h }
  pin: { route: powder part, material: white, print: 1 h per build }
demand:
  cap: { jobs: 12 per week, jobs at once: 1 to 3, when: { mon-fri 08:00-12:00: 2, sun 22:00-02:00: 1 }, growth: 2 % per month, pieces: geometric mean 4, promise: 3 working days, rush: 20 %, rush promise: 1 working day, cut-off: 12:00 }
  cap again: { part: cap, every: erlang 2 mean 30 h, jobs at once: 2, pieces: [1, 1, 4], promise: 48 h }
  box: { jobs: 1 per day, when: night, promise: 2 working days }
  pin: { dates: [2027-03-01 09:00, { at: 2027-03-02 10:30, pieces: 3, rush: yes }], rush promise: 1 working day }
dispatch: { order: [benches, machines, stations], fit on: drawn }
at the start:
  jobs:
    - { demand: cap, pieces: 4, stage: sand, remaining: 12 min, arrived: 2027-02-26 10:00, due: 2027-03-03 16:30, rush: yes }
    - { demand: box, stage: build, in: powder 2 }
  machines:
    powder 2: { busy until: 2027-03-01 09:30, material: black }
`;

describe('a scenario that uses every key', () => {
  const reading = readScenario(EVERYTHING, 'everything.yaml');

  it('is read without a warning', () => {
    expect(reading).toMatchObject({ kind: 'scenario', warnings: [] });
  });

  it('gives settings', () => {
    expect(reading.kind === 'scenario' ? reading.settings : null).toEqual({
      seed: '7',
      weeks: 8,
      ignoredWeeks: 2,
      capWeeks: 4,
      replications: null,
      precision: { measure: 'p90 lead time', relativeHalfWidth: 0.05 },
      replicationLimit: 400,
      level: 0.9,
    });
  });

  it('gives calendars in hours since the start of the plan, a Monday', () => {
    const { calendars, labCalendar, startDate, clockChanges } = labOf(EVERYTHING);
    expect([startDate, labCalendar]).toEqual(['2027-03-01', 'day']);
    expect(clockChanges).toHaveLength(20);
    const [day, night, always, ...more] = calendars;
    expect(more).toEqual([]);
    expect(day?.weekly).toHaveLength(10);
    expect(day?.weekly.slice(0, 3)).toEqual([
      { fromHour: 8, toHour: 12 },
      { fromHour: 12.5, toHour: 16.5 },
      { fromHour: 32, toHour: 36 },
    ]);
    expect(day?.closedDays).toEqual([4, 18, 298, 299, 300]);
    expect(day?.extra).toEqual([{ fromHour: 5 * 24 + 8, toHour: 5 * 24 + 12 }]);
    expect(night?.weekly.map((span) => [span.fromHour, span.toHour])).toEqual([
      [22, 30],
      [46, 54],
      [70, 78],
      [94, 102],
      [166, 174],
    ]);
    expect(night?.closedDays).toEqual([18, 298, 299, 300]);
    expect(always).toEqual({
      name: 'always',
      weekly: [{ fromHour: 0, toHour: 168 }],
      closedDays: [],
      extra: [],
    });
  });

  it('gives people, machines, stations and carriers', () => {
    const lab = labOf(EVERYTHING);
    const minutes = (value: number) => ({
      distribution: { kind: 'constant', value: value / 60 },
      typicalHours: value / 60,
    });
    expect(lab.people[0]).toEqual({
      name: 'technicians',
      count: 2,
      calendar: 'day',
      skills: ['run machines', 'hand work'],
      otherDutiesShare: 0.1,
      graceHours: 0.25,
    });
    expect(lab.machines).toEqual([
      {
        name: 'powder',
        process: 'PBF',
        count: 2,
        capacity: 100,
        prepare: { skill: 'hand work', persons: 2, duration: minutes(10), pausable: false },
        setUp: { skill: 'run machines', persons: 1, duration: minutes(20), pausable: true },
        materialChanges: [
          { from: 'white', to: 'black', duration: minutes(20), attended: true },
          { from: null, to: 'white', duration: minutes(60), attended: false },
          { from: null, to: null, duration: minutes(30), attended: true },
        ],
        warmUp: minutes(60),
        coolDown: {
          where: 'outside',
          duration: { distribution: { kind: 'pert', low: 2, mode: 3, high: 6 }, typicalHours: 3 },
        },
        unload: { skill: 'run machines', persons: 1, duration: minutes(5), pausable: false },
        launch: {
          fullShare: 0.8,
          waitedHours: 10,
          beforeClosing: true,
          fixedHours: [14, 62],
          promiseAtRisk: true,
          preferAttendedEnd: true,
        },
        carrier: 'build units',
        initialMaterial: 'white',
      },
    ]);
    expect(lab.carriers).toEqual([{ name: 'build units', count: 3 }]);
    expect(lab.stations).toEqual([
      { name: 'unpacker', count: 2, capacity: 1, unit: 'builds', fullShare: 0, waitedHours: null },
      { name: 'blaster', count: 1, capacity: 40, unit: 'parts', fullShare: 0.5, waitedHours: 2 },
      { name: 'oven', count: 1, capacity: 3, unit: 'jobs', fullShare: 0, waitedHours: null },
    ]);
    expect(lab.dispatch).toEqual({ order: ['bench', 'machine', 'station'], fitOn: 'drawn' });
  });

  it('gives parts whose stages take what the stage, the station or the part itself says', () => {
    const [cap, box, pin] = labOf(EVERYTHING).parts;
    expect([cap?.space, box?.space, pin?.space]).toEqual([2, 10, 1]);
    expect(
      cap?.stages.map((stage) => [stage.name, stage.kind, stage.level, stage.move, stage.emptiesCarrier]),
    ).toEqual([
      ['build', 'build', 'build', 'per build', false],
      ['cool on the shelf', 'wait', 'build', 'per job', false],
      ['unpack', 'station', 'build', 'per job', true],
      ['blast', 'station', 'job', 'per job', false],
      ['harden', 'station', 'job', 'per job', false],
      ['sand', 'work', 'job', 'per job', false],
    ]);
    expect(cap?.stages[2]).toMatchObject({
      basis: 'build',
      load: null,
      runAttendance: { skill: 'hand work', persons: 2, pausable: true },
    });
    expect(cap?.stages[3]).toMatchObject({
      basis: 'batch',
      load: { skill: 'stacking', duration: { typicalHours: 2 / 60 } },
      run: { typicalHours: 10 / 60 },
      runAttendance: null,
      unload: { skill: 'run machines', duration: { typicalHours: 3 / 60 } },
    });
    expect(box?.stages[3]).toMatchObject({
      basis: 'batch',
      load: { skill: 'stacking', duration: { typicalHours: 4 / 60 } },
      run: { typicalHours: 15 / 60 },
    });
    expect(box?.stages[4]).toMatchObject({
      basis: 'job',
      run: { typicalHours: 2 },
      runAttendance: { skill: 'hand work', persons: 1, pausable: false },
    });
    expect(box?.stages[5]).toMatchObject({
      basis: 'part',
      work: { persons: 2, duration: { typicalHours: 2 / 60 } },
    });
  });

  it('gives demand with its profile, promises and dates', () => {
    const [cap, again, box, pin] = labOf(EVERYTHING).demand;
    expect(cap).toEqual({
      name: 'cap',
      part: 'cap',
      arrivals: {
        kind: 'poisson',
        // Twelve jobs a week, two at a time on average.
        perWeek: 6,
        profile: [
          { fromHour: 0, toHour: 2, weight: 1 },
          ...[0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 8, toHour: day * 24 + 12, weight: 2 })),
          { fromHour: 166, toHour: 168, weight: 1 },
        ],
        growthPerMonth: 0.02,
        jobsPerArrival: { kind: 'uniform', low: 1, high: 3 },
      },
      quantity: { kind: 'geometric', mean: 4 },
      rushShare: 0.2,
      due: { kind: 'working days', days: 3, cutOffHour: 12 },
      rushDue: { kind: 'working days', days: 1, cutOffHour: 12 },
    });
    expect(again).toMatchObject({
      part: 'cap',
      arrivals: {
        kind: 'renewal',
        gap: { kind: 'gamma', shape: 2, scale: 15 },
        jobsPerArrival: { kind: 'fixed', value: 2 },
      },
      quantity: { kind: 'list', values: [1, 1, 4] },
      due: { kind: 'clock', hours: 48 },
      rushDue: { kind: 'clock', hours: 48 },
    });
    expect(box?.arrivals).toMatchObject({
      perWeek: 7,
      profile: [
        { fromHour: 0, toHour: 6, weight: 1 },
        { fromHour: 22, toHour: 30, weight: 1 },
        { fromHour: 46, toHour: 54, weight: 1 },
        { fromHour: 70, toHour: 78, weight: 1 },
        { fromHour: 94, toHour: 102, weight: 1 },
        { fromHour: 166, toHour: 168, weight: 1 },
      ],
    });
    expect(box?.due).toEqual({ kind: 'working days', days: 2, cutOffHour: 14 });
    expect(pin).toMatchObject({
      arrivals: {
        kind: 'dated',
        jobs: [
          { atHour: 9, quantity: null, rush: null },
          { atHour: 34.5, quantity: 3, rush: true },
        ],
      },
      due: { kind: 'none' },
      rushDue: { kind: 'working days', days: 1, cutOffHour: 14 },
    });
  });

  it('gives what stands in the lab at the start', () => {
    expect(labOf(EVERYTHING).initialState).toEqual({
      jobs: [
        {
          stream: 'cap',
          quantity: 4,
          rush: true,
          arrivedAtHour: -62,
          dueAtHour: 64.5,
          stage: 'sand',
          remainingHours: 0.2,
        },
        {
          stream: 'box',
          quantity: 1,
          rush: false,
          arrivedAtHour: 0,
          dueAtHour: null,
          stage: 'build',
          remainingHours: null,
        },
      ],
      machines: [{ machine: 'powder 2', busyUntilHour: 9.5, material: 'black', jobs: [1] }],
    });
  });

  it.each([
    ['demand: cap, pieces', 'demand: cpa, pieces', 'There is no demand called "cpa".', 'cap'],
    ['stage: sand', 'stage: snad', 'There is no stage of its route called "snad".', 'sand'],
    ['stage: build, in', 'stage: blast, in', '"powder 2" does not do the stage "blast".', 'the build stage'],
    ['in: powder 2', 'in: powder 1', 'There is no busy machine at the start called "powder 1".', 'powder 2'],
    ['    powder 2: {', '    powder 3: {', 'There is no machine called "powder 3".', 'powder 1'],
    [
      'busy until: 2027-03-01',
      'busy until: 2027-02-28',
      'This lies before the start of the plan.',
      'the moment of the start, when it only waits to be unloaded',
    ],
    [
      'arrived: 2027-02-26',
      'arrived: 2027-03-26',
      'This lies behind the start of the plan.',
      'the job under demand / … / dates',
    ],
    [
      'stage: build, in: powder 2',
      'stage: build, remaining: 2 h, in: powder 2',
      'What is left of "build" is up to the machine.',
      'in: the machine, and "busy until" under machines',
    ],
    [
      'busy until: 2027-03-01 09:30, ',
      '',
      '"busy until" is missing in "powder 2".',
      'busy until: 2027-03-01 09:30',
    ],
  ])('has its start checked: %s -> %s', (from, to, message, write) => {
    expect(EVERYTHING).toContain(from);
    const reading = readScenario(EVERYTHING.replace(from, to), 'lab.yaml');
    const problems = reading.kind === 'problems' ? reading.problems : [];
    expect(problems).toContainEqual(expect.objectContaining({ message, write }));
  });
});

describe('what a scenario leaves open', () => {
  it('is filled in, and listed with where it came from', () => {
    const reading = readScenario(PLAIN_LAB, 'lab.yaml');
    if (reading.kind === 'problems') throw new Error('the plain lab has problems');
    const of = (what: string) => reading.assumptions.find((assumption) => assumption.what === what);
    expect(of('machines / resin / set-up')).toEqual({
      what: 'machines / resin / set-up',
      value: '5 to 20 min, usually 10',
      source: 'default of a machine class',
      line: null,
    });
    expect(of('machines / resin / by')).toMatchObject({
      value: 'run machines',
      source: 'default of the program',
    });
    expect(of('machines / resin / count')).toMatchObject({
      value: '2',
      source: 'stated in the scenario',
      line: 9,
    });
    expect(of('routes / resin part / wash / level')).toMatchObject({
      value: 'build',
      source: 'default of the program',
    });
    expect(of('routes / resin part / wash / attended')).toMatchObject({ value: 'no' });
    expect(of('demand / ring / when')).toMatchObject({ value: 'day (lab hours)' });
    expect(of('lab hours')).toMatchObject({ value: 'day' });
    expect(of('zone')).toMatchObject({ value: 'none: no clock changes' });
  });

  it('takes the hours of the lab for arrivals, and any time where there are none', () => {
    const arrivals = labOf(PLAIN_LAB).demand[0]?.arrivals;
    expect(arrivals?.kind === 'poisson' ? arrivals.profile : null).toHaveLength(10);
    const anyTime = labOf(edited('jobs: 10 per week', 'jobs: 10 per week, when: any time')).demand[0]
      ?.arrivals;
    expect(anyTime).toMatchObject({ profile: null });
  });

  it('takes the name of the file for a plan without a name', () => {
    const reading = readScenario(edited('name: plain lab\n', ''), '/plans/spring quarter.yaml');
    expect(reading).toMatchObject({ kind: 'scenario', lab: { name: 'spring quarter' } });
  });

  it('takes "none" to switch off what a class would do', () => {
    const lab = labOf(edited('start: when full', 'warm-up: none, unload: none, start: when full'));
    expect(lab.machines[0]).toMatchObject({ warmUp: null, unload: null });
    expect(lab.machines[0]?.setUp).not.toBeNull();
  });

  it('finds a launch before closing that never comes', () => {
    const text = edited('hours: day, skills', 'hours: always, skills').replace(
      'when full or after 4 h',
      'before closing',
    );
    expect(readScenario(text, 'lab.yaml')).toMatchObject({
      problems: [
        { line: 9, message: '"resin" waits for closing time, and somebody is there day and night.' },
      ],
    });
  });
});
