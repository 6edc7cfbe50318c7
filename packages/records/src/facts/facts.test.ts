import { describe, expect, it } from 'vitest';
import { at, loggedJob, machineRun } from '../fixture/logged-job.ts';
import { machineFacts } from './machine-groups.ts';
import { partFacts } from './part-facts.ts';
import { processClass } from './process-class.ts';
import { workingDaysBetween, workingHours } from './working-hours.ts';

const WEEKDAYS = [0, 1, 2, 3, 4];

describe('machineFacts', () => {
  it('groups machines whose names differ in a number, with what their jobs say', () => {
    const jobs = [
      loggedJob({ name: '7', process: 'resin', part: 'ring', machine: 'Vat 2' }),
      loggedJob({ name: '8', process: 'resin', part: 'cap' }),
    ];
    const runs = [
      machineRun({ machine: 'Vat 10', job: '8, 7' }),
      machineRun({ machine: 'Vat 1', job: '9' }),
      machineRun({ machine: 'Extruder-A', material: 'black' }),
    ];
    expect(machineFacts(jobs, runs)).toEqual([
      { name: 'Extruder', machines: ['Extruder-A'], process: null, material: 'black', parts: new Map() },
      {
        name: 'Vat',
        machines: ['Vat 1', 'Vat 2', 'Vat 10'],
        process: 'resin',
        material: null,
        parts: new Map([
          ['ring', 2],
          ['cap', 1],
        ]),
      },
    ]);
  });

  it('knows none where none is named', () => {
    expect(machineFacts([loggedJob({})], [])).toEqual([]);
  });
});

describe('partFacts', () => {
  it('counts what a part is asked for, the most frequent part first', () => {
    const rush = { rush: true, asked: at('2026-03-06T10:00'), promised: at('2026-03-09T23:59') };
    const normal = { rush: false, asked: at('2026-03-06T10:00'), promised: at('2026-03-11T23:59') };
    const jobs = [
      loggedJob({ part: 'cap' }),
      loggedJob({ ...rush, quantity: 4, material: 'grey' }),
      loggedJob({ ...normal, quantity: 2, material: 'grey' }),
      loggedJob({ ...normal, quantity: null, material: 'clear', cancelled: true }),
    ];
    const [ring, cap] = partFacts(jobs, [], WEEKDAYS);
    expect(cap).toMatchObject({ name: 'cap', jobs: 1, promise: null, rush: { told: 0, rush: 0 } });
    expect(ring).toMatchObject({
      name: 'ring',
      jobs: 3,
      material: 'grey',
      quantities: [2, 4],
      rush: { told: 3, rush: 1 },
      promise: { workingDays: 3, promised: 2, alike: 2 },
      rushPromise: { workingDays: 1, promised: 1, alike: 1 },
      cancelled: 1,
    });
  });

  it('knows how much was in a build from runs that hold whole jobs of one part', () => {
    const jobs = [
      loggedJob({ name: '1', quantity: 4 }),
      loggedJob({ name: '2', quantity: 3 }),
      loggedJob({ name: '3', quantity: 90 }),
      loggedJob({ name: '4', part: 'cap', quantity: 50 }),
    ];
    const runs = [
      machineRun({ job: '1 2' }),
      // In two runs, in a run that failed, and with another part: none tells how many fit.
      machineRun({ job: '3' }),
      machineRun({ job: '3' }),
      machineRun({ job: '1 4' }),
    ];
    expect(partFacts(jobs, runs.slice(0, 3), WEEKDAYS)[0]?.mostInBuild).toEqual({ pieces: 7, runs: 1 });
    expect(partFacts(jobs, runs.slice(3), WEEKDAYS)[0]?.mostInBuild).toBeNull();
  });
});

describe('workingHours', () => {
  const finishes = (times: string[]) => times.map((time) => loggedJob({ finished: at(time) }));
  const days = ['09', '10', '11', '12', '13'];

  it('span the finishes of working days, but for two in a hundred at either end', () => {
    const times = days.flatMap((day) =>
      Array.from(
        { length: 30 },
        (_, index) => `2026-03-${day}T${String(8 + (index % 8)).padStart(2, '0')}:20`,
      ),
    );
    const odd = ['2026-03-14T03:00', '2026-03-09T23:00'];
    expect(workingHours(finishes([...times, ...odd]))).toEqual({
      days: WEEKDAYS,
      fromHour: 8,
      toHour: 16,
      counted: 152,
    });
  });

  it('are not told by few finishes, by dates alone, or by times all over the clock', () => {
    const allOver = Array.from(
      { length: 96 },
      (_, index) => `2026-03-09T${String(index % 24).padStart(2, '0')}:00`,
    );
    expect(workingHours(finishes(['2026-03-09T08:00']))).toBeNull();
    expect(workingHours(finishes(allOver))).toBeNull();
    expect(workingHours(allOver.map(() => loggedJob({ finished: 1, finishedHasClock: false })))).toBeNull();
  });
});

describe('workingDaysBetween', () => {
  it.each([
    ['2026-03-06T10:00', '2026-03-06T23:59', 0],
    ['2026-03-06T10:00', '2026-03-09T08:00', 1],
    ['2026-03-04T10:00', '2026-03-11T08:00', 5],
  ])('from %s to %s are %i', (from, to, count) => {
    expect(workingDaysBetween(at(from), at(to), WEEKDAYS)).toBe(count);
  });
});

describe('processClass', () => {
  it.each([
    [['Resin', null], 'small mask VPP'],
    [['SLS'], 'compact PBF'],
    [[null, 'Pulveranlage 1', 'PA 12'], 'compact PBF'],
    [['FFF heated'], 'heated MEX'],
    [['filament'], 'small MEX'],
    [[null, null, 'PLA'], 'small MEX'],
    [['milling', null], null],
  ] as const)('of %j is %s', (words, found) => {
    expect(processClass(words)).toBe(found);
  });
});
