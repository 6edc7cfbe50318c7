import { promiseAnswerSchema } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { axisTitles, compileChart } from '../fixture/compiled-chart.ts';
import { promiseFixture } from '../fixture/promise-fixture.ts';
import { dayTicks } from './day-axis.ts';
import { promiseChartsOf } from './promise-charts-of.ts';

test('The invented answer is such as the schema allows.', () => {
  expect(promiseAnswerSchema.parse(promiseFixture())).toEqual(promiseFixture());
});

describe.each(['wide', 'narrow'] as const)('The %s charts of promised dates', (size) => {
  const charts = promiseChartsOf(promiseFixture(), size);

  test('are of the ways of a request, and of the jobs in the lab', () => {
    expect(charts.map(({ id }) => id)).toEqual(['ways', 'open-jobs']);
    const { request: _, ...rest } = promiseFixture();
    expect(promiseChartsOf({ ...rest, request: null, openJobs: [] }, size)).toEqual([]);
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s compiles without a complaint, names its axis, and says the same in words',
    (_, chart) => {
      const { spec, complaints } = compileChart(chart);
      expect(complaints).toEqual([]);
      expect(axisTitles(spec)).toContain('date, at midnight');
      expect(chart.description).toMatch(/Tue 2 Mar \d\d:\d\d with 50 %/);
    },
  );

  test('have the first due on top, what is overdue at its left edge, and what has no promise last', () => {
    const jobs = charts[1];
    expect(jobs?.description).toMatch(/^job 3: .*job 2: .*job 1: .*job 4: /);
    const due = JSON.stringify(jobs?.spec).match(/"row":0,"hours":0\b/);
    expect(due).not.toBeNull();
  });
});

test('Of many jobs the chart shows those that are most at risk, and says so.', () => {
  const answer = promiseFixture();
  const [job] = answer.openJobs ?? [];
  if (job === undefined) throw new Error('There is no job.');
  const share = (value: number) => ({
    kind: 'estimate' as const,
    value,
    low: value,
    high: value,
    level: 0.95,
    replications: 199,
  });
  const openJobs = Array.from({ length: 60 }, (_, index) => ({
    ...job,
    job: `job ${index + 1}`,
    onTime: share(index / 60),
  }));
  const chart = promiseChartsOf({ ...answer, request: null, openJobs }, 'wide')[0];
  expect(chart?.title).toContain('24 jobs that are most at risk');
  expect(chart?.description).toContain('job 24:');
  expect(chart?.description).not.toContain('job 25:');
});

test('Days are named at their midnights, as close as there is room for.', () => {
  expect(dayTicks('2027-03-01 09:30', 60, 600, 'wide')).toEqual([
    { hours: 14.5, label: 'Tue 2 Mar' },
    { hours: 38.5, label: 'Wed 3 Mar' },
  ]);
  expect(dayTicks('2027-03-01 00:00', 240, 320, 'narrow').map(({ hours }) => hours)).toEqual([
    0, 48, 96, 144, 192, 240,
  ]);
});
