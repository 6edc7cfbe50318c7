import type { Results } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import type { ChartSize } from './chart.ts';
import { chartsOf } from './charts-of.ts';
import { axisTitles, compileChart, expressionsOf } from './fixture/compiled-chart.ts';
import { resultsFixture } from './fixture/results-fixture.ts';

const SIZES: readonly ChartSize[] = ['wide', 'narrow'];

/** The specification with each table of data cut to its length and its first and last rows. */
function compact(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(compact);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).map(([key, inner]): [string, unknown] => {
    if (key === 'values' && Array.isArray(inner) && inner.length > 3 && typeof inner[0] === 'object') {
      return [key, { rows: inner.length, first: inner[0], last: inner.at(-1) }];
    }
    return [key, compact(inner)];
  });
  return Object.fromEntries(entries);
}

/** JSON in which everything that fits a line stands on one. */
function print(value: unknown, indent = ''): string {
  const line = JSON.stringify(value);
  if (value === null || typeof value !== 'object' || line.length + indent.length <= 110) return line;
  const inner = `${indent} `;
  const body = Array.isArray(value)
    ? value.map((one) => inner + print(one, inner))
    : Object.entries(value).map(([key, one]) => `${inner}${JSON.stringify(key)}: ${print(one, inner)}`);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${body.join(',\n')}\n${indent}${close}`;
}

function empty(results: Results): Results {
  return {
    ...results,
    jobs: [],
    hours: [],
    queues: [],
    machines: [],
    builds: [],
    stations: [],
    people: [],
    money: null,
    handCalculation: [],
  };
}

/** Enough of everything to see how a chart is made, and no more. */
function few(results: Results): Results {
  const part = results.hours[0]?.part;
  return {
    ...results,
    queues: results.queues.filter((queue) => queue.kind !== 'all').slice(0, 2),
    jobs: results.jobs.filter((one) => one.part === null || one.part === part),
    hours: results.hours.slice(0, 1),
    machines: results.machines.slice(0, 2),
    builds: results.builds.slice(1),
    stations: results.stations.slice(0, 2),
    people: results.people.slice(0, 1),
    handCalculation: results.handCalculation.slice(0, 2),
  };
}

const IDS = [
  'lead-times',
  'print-share',
  'hours-by-part',
  'hours-by-step',
  'people-hours',
  'people-by-hour',
  'machine-states',
  'build-fill',
  'station-states',
  'queues-by-hour',
  'queues-by-week',
  'cost-split',
  'finished-per-week',
  'jobs-in-lab',
  'load-by-hand',
];

describe.each(SIZES)('The %s charts', (size) => {
  const charts = chartsOf(resultsFixture(), size);

  test('come in the order in which they answer questions', () => {
    expect(charts.map((chart) => chart.id)).toEqual(IDS);
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s compiles without a complaint',
    (_, chart) => {
      expect(compileChart(chart).complaints).toEqual([]);
    },
  );

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s says what it shows, how to read it, how certain it is, and the same in words with numbers',
    (_, chart) => {
      expect(chart.title.length).toBeGreaterThan(15);
      expect(chart.footnote).toMatch(/95\u00a0% confidence interval/);
      expect(chart.footnote).toMatch(/200 replications/);
      expect(chart.description.match(/\d/g)?.length ?? 0).toBeGreaterThan(10);
    },
  );

  test.each(charts.map((chart) => [chart.id, chart] as const))('%s names its axes', (_, chart) => {
    const titles = axisTitles(compileChart(chart).spec).filter((title) => title !== '');
    expect(titles.length).toBeGreaterThan(0);
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))('%s carries its look with it', (_, chart) => {
    expect(chart.spec.config?.font).toContain('Helvetica');
  });
});

test.each(chartsOf(few(resultsFixture())).map((chart) => [chart.id, chart] as const))(
  'The chart %s of a few things compiles to what is checked in.',
  async (_, chart) => {
    const text = `${print(compact(compileChart(chart).spec))}\n`;
    await expect(text).toMatchFileSnapshot(`__snapshots__/${chart.id}.txt`);
  },
);

test('Charts for which the lab has nothing to show are left out.', () => {
  expect(chartsOf(empty(resultsFixture())).map((chart) => chart.id)).toEqual([
    'finished-per-week',
    'jobs-in-lab',
  ]);
});

test('Charts do not change the results they are made of.', () => {
  const results = resultsFixture();
  const before = JSON.stringify(results);
  chartsOf(results);
  expect(JSON.stringify(results)).toBe(before);
});

test('Names from a scenario stand in the data of a chart and never in an expression.', () => {
  const name = "x'] || alert(1) || ['";
  const results = resultsFixture();
  const renamed = JSON.parse(JSON.stringify(results).replaceAll('lens ring', name)) as Results;
  for (const chart of chartsOf(renamed)) {
    const { spec, complaints } = compileChart(chart);
    expect(complaints).toEqual([]);
    expect(expressionsOf(spec).filter((expression) => expression.includes('alert'))).toEqual([]);
  }
});
