import { NO_CHANGES, NO_CONDITIONS } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { EVERYTHING } from './fixture/everything.ts';
import { labOf } from './fixture/lab-of.ts';
import { readScenario } from './read-scenario.ts';

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
      leave: [],
      absence: null,
    });
    expect(lab.machines).toEqual([
      {
        name: 'powder',
        process: 'PBF',
        count: 2,
        capacity: 100,
        mostJobs: null,
        shaped: null,
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
        firstLayers: null,
        failure: null,
        ...NO_CONDITIONS,
      },
    ]);
    expect(lab.carriers).toEqual([{ name: 'build units', count: 3 }]);
    expect(lab.stations).toEqual([
      {
        name: 'unpacker',
        count: 2,
        capacity: 1,
        unit: 'builds',
        fullShare: 0,
        waitedHours: null,
        ...NO_CONDITIONS,
      },
      {
        name: 'blaster',
        count: 1,
        capacity: 40,
        unit: 'parts',
        fullShare: 0.5,
        waitedHours: 2,
        ...NO_CONDITIONS,
      },
      {
        name: 'oven',
        count: 1,
        capacity: 3,
        unit: 'jobs',
        fullShare: 0,
        waitedHours: null,
        ...NO_CONDITIONS,
      },
    ]);
    expect(lab.dispatch).toEqual({
      order: ['bench', 'machine', 'station'],
      fitOn: 'drawn',
      within: 'promise',
      rushInterrupts: false,
    });
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

  it('gives ways of staffing and what hours are held against', () => {
    const staff = reading.kind === 'scenario' ? reading.scenario.staff : null;
    expect(staff?.rules).toEqual({
      restHours: 10,
      hoursPerWeek: 40,
      daysInARow: 5,
      night: { fromHour: 22, toHour: 30 },
    });
    expect(staff?.options.map(({ name, changes }) => [name, changes.map(({ wording }) => wording)])).toEqual([
      ['guard by day', ['guard / hours: day']],
      ['three', ['technicians / count: 3', 'technicians / grace: 5 min']],
    ]);
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
        weekVariation: 0.3,
        jobsPerArrival: { kind: 'uniform', low: 1, high: 3 },
      },
      quantity: { kind: 'geometric', mean: 4 },
      rushShare: 0.2,
      due: { kind: 'working days', days: 3, cutOffHour: 12 },
      rushDue: { kind: 'working days', days: 1, cutOffHour: 12 },
      changes: NO_CHANGES,
      sentOut: {
        always: false,
        waitingJobsAbove: null,
        promiseAtRisk: true,
        leadTime: {
          kind: 'working days',
          days: { kind: 'pert', low: 4, mode: 6, high: 9 },
          cutOffHour: 12,
        },
      },
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
      sentOut: { waitingJobsAbove: 9, promiseAtRisk: true, leadTime: { kind: 'clock' } },
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

  it('gives targets, and the deadlines that have to be looked at for them', () => {
    const targets = reading.kind === 'scenario' ? reading.targets : [];
    const longRun = { kind: 'long run' };
    expect(targets.map(({ wording: _, ...target }) => target)).toEqual([
      {
        kind: 'share within',
        jobs: { part: null, rush: true },
        share: 0.9,
        within: { kind: 'clock', hours: 48 },
        meaning: longRun,
      },
      {
        kind: 'share within',
        jobs: { part: 'cap', rush: false },
        share: 0.95,
        // "cap" has cut-offs of two kinds: that of all jobs holds.
        within: { kind: 'working days', days: 5, cutOffHour: 14 },
        meaning: { kind: 'chance of a period', chance: 0.9 },
      },
      {
        kind: 'share within',
        jobs: { part: 'box', rush: null },
        share: 0.9,
        within: { kind: 'working days', days: 3, cutOffHour: 14 },
        meaning: longRun,
      },
      { kind: 'on time', jobs: { part: null, rush: null }, share: 0.95, meaning: longRun },
      { kind: 'busy', of: 'people', group: null, atMost: 0.8, meaning: longRun },
      { kind: 'busy', of: 'people', group: 'guard', atMost: 0.5, meaning: longRun },
      { kind: 'busy', of: 'machines', group: 'powder', atMost: 0.85, meaning: longRun },
      { kind: 'busy', of: 'stations', group: 'blaster', atMost: 0.6, meaning: longRun },
      { kind: 'budget', of: 'purchases', atMost: 40000 },
      { kind: 'budget', of: 'year', atMost: 250000 },
      { kind: 'cost per part', atMost: 12 },
    ]);
    expect(targets[1]?.wording).toBe('95 % of normal caps within 5 working days in 90 % of periods');
    expect(labOf(EVERYTHING).deadlines).toEqual([
      { kind: 'working days', days: 5, cutOffHour: 14 },
      { kind: 'working days', days: 3, cutOffHour: 14 },
    ]);
  });

  it('gives what stands in the lab at the start', () => {
    expect(labOf(EVERYTHING).initialState).toEqual({
      atHour: 8,
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
          name: 'R-1042',
          stream: 'box',
          quantity: 1,
          rush: false,
          arrivedAtHour: 8,
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
      'now: 2027-03-01',
      'now: 2027-02-24',
      'This lies before the start of the plan.',
      'starts: 2027-02-22, the Monday of that week',
    ],
    [
      'busy until: 2027-03-01',
      'busy until: 2027-02-28',
      'This lies before “now”.',
      'the moment of now, when it only waits to be unloaded',
    ],
    [
      'arrived: 2027-02-26',
      'arrived: 2027-03-26',
      'This lies behind “now”.',
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
