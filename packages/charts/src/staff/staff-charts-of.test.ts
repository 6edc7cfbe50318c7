import type { StaffAnswer } from '@buildweek/results';
import { staffAnswerSchema } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { axisTitles, compileChart, expressionsOf } from '../fixture/compiled-chart.ts';
import { staffAnswerFixture } from '../fixture/staff-answer-fixture.ts';
import { shownOption, staffChartsOf } from './staff-charts-of.ts';

const answer = staffAnswerFixture();
const IDS = ['staff-options', 'waiting-map', 'waiting-by-skill'];

/** All numbers of the rows of data of a chart. */
function numbersOf(chart: unknown): Set<number> {
  const found = new Set<number>();
  const collect = (value: unknown, inData: boolean): void => {
    if (typeof value === 'number' && inData) found.add(value);
    else if (Array.isArray(value)) for (const inner of value) collect(inner, inData);
    else if (value !== null && typeof value === 'object') {
      for (const [key, inner] of Object.entries(value)) collect(inner, inData || key === 'data');
    }
  };
  collect(chart, false);
  return found;
}

test('The invented answer is one that the schema allows.', () => {
  expect(staffAnswerSchema.parse(answer)).toEqual(answer);
});

describe.each(['wide', 'narrow'] as const)('The %s charts of ways of staffing', (size) => {
  const charts = staffChartsOf(answer, size);

  test('come in the order of the page', () => {
    expect(charts.map(({ id }) => id)).toEqual(IDS);
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s compiles without a complaint, names its axes, and says the same in words',
    (_, chart) => {
      const { spec, complaints } = compileChart(chart);
      expect(complaints).toEqual([]);
      expect(axisTitles(spec).filter((title) => title !== '').length).toBeGreaterThan(0);
      expect(chart.title.length).toBeGreaterThan(15);
      expect(chart.footnote.length).toBeGreaterThan(50);
      expect(chart.description.match(/\d/g)?.length ?? 0).toBeGreaterThan(5);
    },
  );

  test('hold every hour of the week of today and of the best option', () => {
    const numbers = numbersOf(charts[1]?.spec);
    for (const plan of [answer.plans[0], answer.plans[1]]) {
      expect(plan?.waiting.filter((jobs) => !numbers.has(jobs))).toEqual([]);
    }
  });

  test('hold the differences in days, and only an arrow for what lies far beyond the others', () => {
    const numbers = numbersOf(charts[0]?.spec);
    const days = answer.plans.slice(1, 5).flatMap(({ differences }) => {
      const [first] = differences;
      return first?.difference.kind === 'estimate' ? [first.difference.value / 24] : [];
    });
    expect(days.filter((value) => !numbers.has(value))).toEqual([]);
    expect(numbers.has(35)).toBe(false);
    expect(charts[0]?.description).toContain('one fewer of technicians (fewer hours): +35');
  });
});

test('Beside today stands the best option, and without one that of the best value.', () => {
  expect(shownOption(answer)?.name).toBe('one of technicians from 10:00');
  expect(shownOption({ ...answer, best: null })?.name).toBe('one more of technicians');
  expect(shownOption({ ...answer, best: null, plans: answer.plans.slice(0, 1) })).toBeNull();
});

test('Without a measure that decides, and without anybody who waits, there are the maps that are left.', () => {
  expect(staffChartsOf({ ...answer, decidedBy: null }).map(({ id }) => id)).toEqual(IDS.slice(1));
  const idle = answer.plans.map((plan) => ({
    ...plan,
    waiting: plan.waiting.map(() => 0),
    waitingBySkill: [],
  }));
  for (const chart of staffChartsOf({ ...answer, plans: idle }))
    expect(compileChart(chart).complaints).toEqual([]);
});

test('Names of options and skills stand in data and never in an expression.', () => {
  const name = "x'] || alert(1) || ['";
  const text = JSON.stringify(answer)
    .replaceAll('one of technicians from 10:00', name)
    .replaceAll('hand work', name);
  for (const chart of staffChartsOf(JSON.parse(text) as StaffAnswer)) {
    const { spec, complaints } = compileChart(chart);
    expect(complaints).toEqual([]);
    expect(expressionsOf(spec).filter((expression) => expression.includes('alert'))).toEqual([]);
  }
});
