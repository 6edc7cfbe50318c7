import { learnedAnswerSchema } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { axisTitles, compileChart } from '../fixture/compiled-chart.ts';
import { learnedFixture } from '../fixture/learned-fixture.ts';
import { learnedChartsOf } from './learned-charts-of.ts';

test('What was learned is such as the schema allows.', () => {
  expect(learnedAnswerSchema.parse(learnedFixture())).toEqual(learnedFixture());
});

describe.each(['wide', 'narrow'] as const)('The %s charts of what was learned', (size) => {
  const charts = learnedChartsOf(learnedFixture(), size);

  test('are those of the page', () => {
    expect(charts.map(({ id }) => id)).toEqual([
      'weekly-counts',
      'arrivals-by-hour',
      'fitted-durations',
      'failed-builds',
    ]);
  });

  test.each(charts.map((chart) => [chart.id, chart] as const))(
    '%s compiles without a complaint, names its axes, and says the same in words',
    (_, chart) => {
      const { spec, complaints } = compileChart(chart);
      expect(complaints).toEqual([]);
      expect(axisTitles(spec).filter((title) => title !== '').length).toBeGreaterThan(0);
      expect(chart.title.length).toBeGreaterThan(15);
      expect(chart.description.match(/\d/g)?.length ?? 0).toBeGreaterThan(3);
    },
  );
});

test('A log that tells no hours, no times and no runs has no charts of them.', () => {
  const { weeks } = learnedFixture();
  const little = { ...learnedFixture(), blocks: null, durations: [], failures: [], weeks };
  expect(learnedChartsOf(little).map(({ id }) => id)).toEqual(['weekly-counts']);
});

test('Families that fit much worse are not drawn.', () => {
  const drawn = JSON.stringify(learnedChartsOf(learnedFixture())[2]?.spec);
  expect(drawn).toContain('Weibull');
  expect(drawn).not.toContain('lognormal');
});
