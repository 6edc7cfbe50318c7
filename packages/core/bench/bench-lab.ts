import type { Duration, Lab } from '@buildweek/model';
import {
  attended,
  buildStage,
  constant,
  exponential,
  lab,
  machine,
  part,
  people,
  station,
  stationStage,
  stream,
  weekdays,
  workStage,
} from '../src/fixture/lab.ts';

/** `low to high, usually typical`, in minutes. */
function minutes(low: number, typical: number, high: number): Duration {
  return {
    distribution: { kind: 'pert', low: low / 60, mode: typical / 60, high: high / 60 },
    typicalHours: typical / 60,
  };
}

function due(hours: number, rushHours: number) {
  return {
    rushShare: 0.15,
    due: { kind: 'clock', hours },
    rushDue: { kind: 'clock', hours: rushHours },
  } as const;
}

function poisson(perWeek: number) {
  return {
    kind: 'poisson',
    perWeek,
    profile: null,
    growthPerMonth: 0,
    jobsPerArrival: { kind: 'fixed', value: 1 },
  } as const;
}

/**
 * The lab of `test/reference/lab_model.py`: two technicians by day and help in the evening, resin and filament
 * machines, of which the latter break down, a washer for whole builds, a curing station that waits to fill. Figures
 * are invented.
 */
export function benchLab(): Lab {
  const launch = {
    fullShare: 0.6,
    waitedHours: 4,
    beforeClosing: false,
    fixedHours: null,
    promiseAtRisk: false,
    preferAttendedEnd: false,
  };
  const prepare = workStage('prepare file', {
    ...attended('prepare files', 0),
    duration: minutes(10, 20, 45),
  });
  const removeSupports = workStage(
    'remove supports',
    { ...attended('hand work', 0, { pausable: true }), duration: minutes(2, 5, 15) },
    { basis: 'part' },
  );
  const inspect = workStage('inspect', {
    ...attended('hand work', 0, { pausable: true }),
    duration: minutes(4, 8, 18),
  });
  const resinStages = [
    prepare,
    buildStage('build', 'resin'),
    stationStage('wash', 'washer', constant(0.4), {
      level: 'build',
      load: attended('run machines', 0.1),
      unload: attended('run machines', 0.1),
    }),
    removeSupports,
    stationStage('cure', 'curing', constant(0.5), {
      load: attended('run machines', 0.05),
      unload: attended('run machines', 0.05),
    }),
    inspect,
  ];
  const resinPrint = { kind: 'typed', perBuild: minutes(120, 180, 360), perPart: constant(0.02) } as const;
  return lab({
    name: 'bench lab',
    calendars: [
      { name: 'day', weekly: weekdays([7, 11.5], [12, 15.5]), closedDays: [], extra: [] },
      { name: 'evening', weekly: weekdays([16, 20]).slice(0, 4), closedDays: [], extra: [] },
    ],
    people: [
      people('technicians', 2, ['prepare files', 'run machines', 'hand work']),
      people('evening help', 1, ['run machines'], { calendar: 'evening' }),
    ],
    machines: [
      machine('resin', {
        process: 'VPP',
        count: 3,
        capacity: 24,
        setUp: { ...attended('run machines', 0), duration: minutes(8, 12, 24) },
        warmUp: constant(0.1),
        unload: { ...attended('run machines', 0), duration: minutes(6, 9, 18) },
        launch,
      }),
      machine('filament', {
        process: 'MEX',
        count: 6,
        capacity: 4,
        setUp: { ...attended('run machines', 0), duration: minutes(6, 10, 20) },
        warmUp: constant(0.1),
        coolDown: { duration: constant(0.5), where: 'machine' },
        unload: { ...attended('run machines', 0), duration: minutes(4, 6, 12) },
        breakdowns: [
          {
            name: 'nozzle',
            by: 'running hours',
            between: { kind: 'exponential', mean: 60 },
            effect: 'build goes on after the repair',
            repair: {
              kind: 'own',
              work: { ...attended('run machines', 0, { pausable: true }), duration: minutes(20, 40, 90) },
            },
          },
        ],
      }),
    ],
    stations: [
      station('washer', { capacity: 2, unit: 'builds' }),
      station('curing', { capacity: 6, unit: 'jobs', fullShare: 0.5, waitedHours: 1 }),
    ],
    parts: [
      part('ring', resinStages, { print: resinPrint }),
      part('housing', resinStages, { print: resinPrint, space: 3 }),
      part('bracket', [prepare, buildStage('build', 'filament'), removeSupports, inspect], {
        print: {
          kind: 'typed',
          perBuild: constant(0.3),
          perPart: {
            distribution: { kind: 'lognormal', logMean: 0.4, logStandardDeviation: 0.4 },
            typicalHours: 1.6,
          },
        },
      }),
    ],
    demand: [
      stream('ring', {
        arrivals: poisson(20),
        quantity: { kind: 'uniform', low: 1, high: 12 },
        ...due(72, 24),
      }),
      stream('housing', {
        arrivals: poisson(9),
        quantity: { kind: 'uniform', low: 1, high: 4 },
        ...due(96, 24),
      }),
      stream('bracket', {
        arrivals: poisson(24),
        quantity: { kind: 'uniform', low: 1, high: 4 },
        ...due(72, 24),
      }),
    ],
  });
}

/** M/M/1 as a lab: one person, one kind of work, an arrival an hour, load 0.9. */
export function queueLab(): Lab {
  return lab({
    name: 'queue',
    calendars: [{ name: 'always', weekly: [{ fromHour: 0, toHour: 168 }], closedDays: [], extra: [] }],
    labCalendar: 'always',
    people: [people('servers', 1, ['serve'], { calendar: 'always' })],
    parts: [
      part('customer', [
        workStage('serve', { ...attended('serve', 0, { pausable: true }), duration: exponential(0.9) }),
      ]),
    ],
    demand: [stream('customer', { arrivals: poisson(168) })],
  });
}
