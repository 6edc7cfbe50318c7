import type { Band, Estimate } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import type { ChartSize } from './chart.ts';
import { chartsOf } from './charts-of.ts';
import { resultsFixture } from './fixture/results-fixture.ts';
import { HOURS_PER_DAY } from './format.ts';
import { simulatedUse } from './simulated-use.ts';

const results = resultsFixture();

/** Every number in the tables of data of a chart, to nine decimals. */
function numbersOf(id: string, size: ChartSize): Set<string> {
  const chart = chartsOf(results, size).find((candidate) => candidate.id === id);
  const found = new Set<string>();
  const collect = (value: unknown, inData: boolean): void => {
    if (typeof value === 'number' && inData) found.add(value.toFixed(9));
    else if (Array.isArray(value)) for (const inner of value) collect(inner, inData);
    else if (value !== null && typeof value === 'object') {
      for (const [key, inner] of Object.entries(value)) collect(inner, inData || key === 'data');
    }
  };
  collect(chart?.spec, false);
  return found;
}

function expectAll(numbers: ReadonlySet<string>, expected: readonly number[]): void {
  expect(expected.length).toBeGreaterThan(0);
  expect(expected.map((one) => one.toFixed(9)).filter((one) => !numbers.has(one))).toEqual([]);
}

function ofBand(band: Band): number[] {
  return [...band.value, ...band.low, ...band.high];
}

describe.each(['wide', 'narrow'] as const)('The data of the %s chart', (size) => {
  test('of lead times hold both percentiles of each class with both intervals, in days', () => {
    const classes = results.jobs.filter((one) => one.part === null || one.priority !== 'all');
    const hours = classes.flatMap((one) =>
      one.percentiles
        .filter((percentile) => percentile.share === 0.5 || percentile.share === 0.9)
        .flatMap(({ longRun, onePeriod }) => [
          ...(longRun.kind === 'estimate' ? [longRun.value, longRun.low, longRun.high] : []),
          ...(onePeriod.kind === 'prediction' ? [onePeriod.low, onePeriod.high] : []),
        ]),
    );
    expectAll(
      numbersOf('lead-times', size),
      hours.map((one) => one / HOURS_PER_DAY),
    );
  });

  test('of hours by part type hold what each is printed and the interval of its lead time', () => {
    const expected = results.hours.flatMap((part) => {
      const mean = results.jobs.find((one) => one.part === part.part && one.priority === 'all')?.meanLeadTime;
      const print = part.steps.filter((step) => step.phase === 'print').map((step) => step.work.value);
      return [...print, ...(mean?.kind === 'estimate' ? [mean.low, mean.high] : [])];
    });
    expectAll(numbersOf('hours-by-part', size), expected);
  });

  test('of printing against the rest hold the three shares of each lead time', () => {
    const expected = results.hours.flatMap((part) => {
      const wait = part.steps.flatMap((step) => step.waits).reduce((sum, one) => sum + one.hours.value, 0);
      const work = part.steps.reduce((sum, step) => sum + step.work.value, 0);
      const print = part.steps
        .filter((step) => step.phase === 'print')
        .reduce((sum, step) => sum + step.work.value, 0);
      return [print, work - print, wait].map((hours) => hours / (work + wait));
    });
    expectAll(numbersOf('print-share', size), expected);
  });

  test('of builds hold fill and height with their intervals, and the most height', () => {
    const expected = results.builds.flatMap(({ meanFill, meanHeight, mostHeight }) => [
      mostHeight,
      ...[meanFill, meanHeight].flatMap((one) =>
        one.kind === 'estimate' ? [one.value, one.low, one.high] : [],
      ),
    ]);
    expectAll(numbersOf('build-fill', size), expected);
  });

  test('of hours by step hold the work of every step behind its waits', () => {
    const expected = results.hours.flatMap((part) =>
      part.steps.map((step) => step.waits.reduce((sum, wait) => sum + wait.hours.value, 0) + step.work.value),
    );
    expectAll(numbersOf('hours-by-step', size), expected);
  });

  test('of machines and stations hold every share and the interval of the time in use', () => {
    for (const [id, units] of [
      ['machine-states', results.machines],
      ['station-states', results.stations],
    ] as const) {
      const shares = units.flatMap((unit) =>
        (unit.states as readonly { state: string; share: Estimate }[]).flatMap(({ state, share }) =>
          state === 'idle'
            ? [share.value, 1 - share.low, 1 - share.high]
            : share.value > 0
              ? [share.value]
              : [],
        ),
      );
      expectAll(numbersOf(id, size), shares);
    }
  });

  test('of people hold the hours of a week, and who is busy and on duty in each hour', () => {
    const hours = results.people.flatMap((group) =>
      group.states
        .filter((one) => one.state === 'work' || one.state === 'idle')
        .map((one) => one.share.value * 168),
    );
    expectAll(numbersOf('people-hours', size), hours);
    expectAll(
      numbersOf('people-by-hour', size),
      results.people.flatMap((group) => [...ofBand(group.busyByHourOfWeek), ...group.onDutyByHourOfWeek]),
    );
  });

  test('of queues hold the curves of the six longest, and not the jobs in the lab as a whole', () => {
    const queues = results.queues
      .filter((queue) => queue.kind !== 'all')
      .sort((one, other) => other.meanLength.value - one.meanLength.value)
      .slice(0, 6);
    expectAll(
      numbersOf('queues-by-hour', size),
      queues.flatMap((queue) => ofBand(queue.byHourOfWeek)),
    );
    expectAll(
      numbersOf('queues-by-week', size),
      queues.flatMap((queue) => ofBand(queue.byWeek)),
    );
  });

  test('of the weeks hold arrivals, finished jobs and parts, and the jobs in the lab', () => {
    const { arrivedJobs, finishedJobs, finishedParts, jobsInLab } = results.flow;
    expectAll(numbersOf('finished-per-week', size), [
      ...arrivedJobs.value,
      ...ofBand(finishedJobs),
      ...ofBand(finishedParts),
    ]);
    expectAll(numbersOf('jobs-in-lab', size), ofBand(jobsInLab));
  });

  test('of the hand calculation hold the load and the simulated use of every line', () => {
    const expected = results.handCalculation.flatMap((hand) => {
      const use = simulatedUse(results, hand);
      return [hand.load, ...(use === null ? [] : [use.working.value, use.working.low, use.working.high])];
    });
    expectAll(numbersOf('load-by-hand', size), expected);
  });
});

test('A percentile that is not given or never reached is said in words and draws no mark.', () => {
  const [all] = results.jobs;
  if (all === undefined) throw new Error('The fixture has no jobs.');
  const percentiles = all.percentiles.map((percentile) => ({
    ...percentile,
    longRun: { kind: 'never', reason: '12 of 100 jobs were not finished' } as const,
  }));
  const [chart] = chartsOf({ ...results, jobs: [{ ...all, percentiles }] });
  expect(chart?.title).toBe('More than one job in ten is not finished by the end of the plan');
  expect(chart?.description).toContain('beyond the end of the plan: 12 of 100 jobs were not finished');
  expect(JSON.stringify(chart?.spec)).toContain('"words":"never"');
});
