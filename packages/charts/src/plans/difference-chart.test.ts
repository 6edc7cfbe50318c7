import { type ComparisonAnswer, comparisonAnswerSchema } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { comparisonFixture } from '../fixture/comparison-fixture.ts';
import { axisTitles, compileChart, expressionsOf, numbersIn } from '../fixture/compiled-chart.ts';
import { comparisonChartsOf } from './difference-chart.ts';

const answer = comparisonFixture();

test('The fixture is an answer as it is published.', () => {
  expect(comparisonAnswerSchema.parse(answer)).toEqual(answer);
});

describe.each(['wide', 'narrow'] as const)('The %s charts of differences', (size) => {
  const charts = comparisonChartsOf(answer, size);

  test('are one for each plan but the first', () => {
    expect(charts.map(({ id }) => id)).toEqual(['differences-1', 'differences-2']);
    expect(charts[0]?.title).toBe('What “technicians / count: 3” changes against “as it is”');
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s compiles without a complaint, names its axis, and says at what level its intervals hold',
    (_, chart) => {
      const { spec, complaints } = compileChart(chart);
      expect(complaints).toEqual([]);
      expect(axisTitles(spec)).toContain('share of the value of “as it is”');
      expect(chart.footnote).toContain('each 99.5\u00a0%');
      expect(chart.footnote).toContain('95\u00a0% confidence');
      expect(chart.footnote).toContain('200 replications');
    },
  );

  test('hold every difference with its interval as a share of the first plan', () => {
    answer.pairs.forEach(({ differences }, position) => {
      const numbers = numbersIn(charts[position]?.spec);
      let held = 0;
      differences.forEach(({ difference }, index) => {
        const before = answer.plans[0]?.measures[index]?.value;
        if (difference.kind !== 'estimate' || before?.kind !== 'estimate') return;
        held++;
        for (const end of [difference.value, difference.low, difference.high]) {
          expect(numbers).toContain((end / before.value).toFixed(6));
        }
      });
      expect(held).toBe(4);
    });
  });

  test('have room for every interval on both sides of nothing', () => {
    for (const chart of charts) {
      const { encoding } = chart.spec as unknown as {
        encoding: { x: { scale: { domain: [number, number] } } };
      };
      const [low, high] = encoding.x.scale.domain;
      expect(low).toBeCloseTo(-high, 12);
      expect(high).toBeGreaterThan(0.05);
    }
  });
});

// What is not reached in one of the plans is no difference, and not among them.
test('The words beside a chart say each difference in its own unit, with its sign.', () => {
  const [chart] = comparisonChartsOf(answer);
  const words = chart?.description.replace(/\s/g, ' ').replace(/−/g, '-');
  expect(words).toBe(
    'nine of ten jobs within: -1.8 days (-2.2 to -1.3). jobs on time: +11 points (8 to 14). technicians at work: -20 points (-25 to -15). committed cost: +85 000 EUR a year (63 750 to 106 250).',
  );
});

test('A pair of which nothing is known draws no chart, and the others keep their numbers.', () => {
  const refused = { kind: 'refused', reason: 'too few' } as const;
  const pairs = answer.pairs.map((pair, index) =>
    index === 0
      ? { ...pair, differences: pair.differences.map((one) => ({ ...one, difference: refused })) }
      : pair,
  );
  expect(comparisonChartsOf({ ...answer, pairs }).map(({ id }) => id)).toEqual(['differences-2']);
});

test('A measure that is zero in the first plan is no share of it, and is left out.', () => {
  const [base, ...others] = answer.plans;
  if (base === undefined) throw new Error('The fixture has no plans.');
  const measures = base.measures.map((measure) =>
    measure.name === 'jobs on time' && measure.value.kind === 'estimate'
      ? { ...measure, value: { ...measure.value, value: 0 } }
      : measure,
  );
  const [chart] = comparisonChartsOf({ ...answer, plans: [{ ...base, measures }, ...others] });
  expect(chart?.description).not.toContain('jobs on time');
  // A number that is not finite would be null.
  expect(JSON.stringify(chart?.spec)).not.toMatch(/"(?:value|low|high)":null/);
});

test('Names of plans stand in data and never in an expression.', () => {
  const name = "x'] || alert(1) || ['";
  const hostile = JSON.parse(JSON.stringify(answer).replaceAll('as it is', name)) as ComparisonAnswer;
  for (const chart of comparisonChartsOf(hostile)) {
    const { spec, complaints } = compileChart(chart);
    expect(complaints).toEqual([]);
    expect(expressionsOf(spec).filter((expression) => expression.includes('alert'))).toEqual([]);
  }
});

test('Charts do not change the answer they are made of.', () => {
  const before = JSON.stringify(answer);
  comparisonChartsOf(answer);
  expect(JSON.stringify(answer)).toBe(before);
});
