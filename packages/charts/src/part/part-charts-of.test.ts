import type { PartAnswer } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import type { ChartSize } from '../chart.ts';
import { axisTitles, compileChart, expressionsOf, numbersIn } from '../fixture/compiled-chart.ts';
import { partAnswerFixture } from '../fixture/part-answer-fixture.ts';
import { partChartsOf } from './part-charts-of.ts';

const answer = partAnswerFixture();
const IDS = ['first-choice', 'stage-timeline', 'hours-per-part', 'minutes-per-part'];

/** Every number in the tables of data of a chart, to six decimals. */
function numbersOf(id: string, size: ChartSize): Set<string> {
  return numbersIn(partChartsOf(answer, size).find((chart) => chart.id === id)?.spec);
}

function expectAll(numbers: ReadonlySet<string>, expected: readonly number[]): void {
  expect(expected.length).toBeGreaterThan(0);
  expect(expected.map((one) => one.toFixed(6)).filter((one) => !numbers.has(one))).toEqual([]);
}

describe.each(['wide', 'narrow'] as const)('The %s charts of a part', (size) => {
  const charts = partChartsOf(answer, size);

  test('come in the order in which they answer questions', () => {
    expect(charts.map((chart) => chart.id)).toEqual(IDS);
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s compiles without a complaint, and names its axes',
    (_, chart) => {
      const { spec, complaints } = compileChart(chart);
      expect(complaints).toEqual([]);
      expect(axisTitles(spec).filter((title) => title !== '').length).toBeGreaterThan(0);
    },
  );

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s says what it shows, how to read it, and the same in words with numbers',
    (_, chart) => {
      expect(chart.title.length).toBeGreaterThan(15);
      expect(chart.footnote.length).toBeGreaterThan(50);
      for (const { route } of answer.ways) expect(chart.description).toContain(route);
      expect(chart.description.match(/\d/g)?.length ?? 0).toBeGreaterThan(10);
    },
  );

  test('hold every stretch of every way', () => {
    const stretches = answer.ways.flatMap((way) => way.timelines.flatMap((one) => one.stretches));
    expectAll(
      numbersOf('stage-timeline', size),
      stretches.flatMap((one) => [one.fromHour, one.toHour]),
    );
  });

  test('hold the curves and the spreads per part', () => {
    const times = answer.ways.flatMap((way) => way.quantities);
    const points = answer.ways.flatMap((way) => way.curve);
    expectAll(numbersOf('hours-per-part', size), [
      ...points.map((one) => one.hours / one.quantity),
      ...times.flatMap(({ hoursPerPart: { typical, low, high } }) => [typical, low, high]),
    ]);
    expectAll(numbersOf('minutes-per-part', size), [
      ...points.map((one) => one.minutesOfPeople / one.quantity),
      ...times.flatMap(({ minutesOfPeoplePerPart: { typical, low, high } }) => [typical, low, high]),
    ]);
  });

  test('hold the hours until all are finished for the fewest and the most pieces', () => {
    const times = answer.ways.flatMap((way) =>
      way.quantities.filter((one) => [1, 100].includes(one.quantity)),
    );
    expectAll(
      numbersOf('first-choice', size),
      times.flatMap(({ finished: [first] }) =>
        first === undefined ? [] : [first.hours.typical, first.hours.low, first.hours.high],
      ),
    );
  });
});

test('An answer with only one way, or with eight, is drawn.', () => {
  const [way] = answer.ways;
  if (way === undefined) throw new Error('The fixture has no ways.');
  const eight = Array.from({ length: 8 }, (_, index) => ({ ...way, route: `route ${index}` }));
  for (const ways of [[way], eight]) {
    for (const chart of partChartsOf({ ...answer, ways, overtakings: [] })) {
      expect(compileChart(chart).complaints, chart.id).toEqual([]);
    }
  }
});

test('Without a way there is no chart.', () => {
  expect(partChartsOf({ ...answer, ways: [], overtakings: [] })).toEqual([]);
});

test('A way that is never finished for a quantity is left out there.', () => {
  const ways = answer.ways.map((way, index) =>
    index === 0 ? { ...way, timelines: [], quantities: [], curve: [] } : way,
  );
  for (const chart of partChartsOf({ ...answer, ways, overtakings: [] })) {
    expect(compileChart(chart).complaints, chart.id).toEqual([]);
  }
});

test('Names of routes, stages and moments stand in data and never in an expression.', () => {
  const name = "x'] || alert(1) || ['";
  let text = JSON.stringify(answer);
  for (const before of ['resin part', 'prepare file', 'Monday 09:00']) {
    text = text.replaceAll(before, name);
  }
  const hostile = JSON.parse(text) as PartAnswer;
  for (const size of ['wide', 'narrow'] as const) {
    for (const chart of partChartsOf(hostile, size)) {
      const { spec, complaints } = compileChart(chart);
      expect(complaints).toEqual([]);
      expect(expressionsOf(spec).filter((expression) => expression.includes('alert'))).toEqual([]);
    }
  }
});

test('Charts do not change the answer they are made of.', () => {
  const before = JSON.stringify(answer);
  partChartsOf(answer);
  expect(JSON.stringify(answer)).toBe(before);
});

test('Two ways of one process have the same colour, and dashes and marks of their own.', () => {
  const chart = partChartsOf(answer).find((one) => one.id === 'hours-per-part');
  const marks = JSON.stringify(chart?.spec);
  expect(marks).toContain('"strokeDash":[1,0]');
  expect(marks).toContain('"strokeDash":[7,4]');
  for (const shape of ['circle', 'square', 'triangle-up', 'diamond']) {
    expect(marks).toContain(`"shape":"${shape}"`);
  }
});
