import { replayAnswerSchema } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { axisTitles, compileChart } from '../fixture/compiled-chart.ts';
import { replayFixture } from '../fixture/replay-fixture.ts';
import { replayChartsOf } from './replay-charts-of.ts';

test('The invented answer is such as the schema allows.', () => {
  expect(replayAnswerSchema.parse(replayFixture())).toEqual(replayFixture());
});

describe.each(['wide', 'narrow'] as const)('The %s charts of a model held against a log', (size) => {
  const charts = replayChartsOf(replayFixture(), size);
  const chart = (id: string) => {
    const found = charts.find((one) => one.id === id);
    if (found === undefined) throw new Error(`There is no chart ${id}.`);
    return found;
  };

  test.each(charts.map((one) => [one.id, one] as const))(
    '%s compiles without a complaint, names its axes, and says the same in words',
    (_, one) => {
      const { spec, complaints } = compileChart(one);
      expect(complaints).toEqual([]);
      expect(axisTitles(spec).filter((title) => title !== '').length).toBeGreaterThan(0);
      expect(one.title.length).toBeGreaterThan(15);
      expect(one.description.match(/\d/g)?.length ?? 0).toBeGreaterThan(3);
      expect(one.footnote).toMatch(/[Bb]and/);
    },
  );

  test('show all weeks of all three measures, what happened over the bands', () => {
    const text = JSON.stringify(chart('replay-weeks').spec);
    for (const words of ['jobs finished', 'jobs in the lab', 'what happened', 'expected', '"usualLow"']) {
      expect(text).toContain(words);
    }
    expect(chart('replay-weeks').title).toBe(
      'As usual in 3 of 6 weeks; 4 to 6 are to be expected of a model that is right',
    );
  });

  test('tell lead times in days where jobs take days', () => {
    expect(chart('replay-lead-times').title).toBe(
      'Nine of ten jobs took at most 3.4 days; the model expects 2.6 (2.0 to 3.2)',
    );
    const quick = replayFixture();
    const hours = {
      ...quick,
      leadTimes: quick.leadTimes.map((one) => ({ ...one, expected: one.expected / 10 })),
    };
    expect(replayChartsOf(hours, size)[1]?.title).toContain('81.0 h');
  });

  test('say which parts differ', () => {
    expect(chart('replay-parts').title).toBe('1 of 2 parts takes longer or shorter than modelled');
    expect(chart('replay-parts').description).toContain(
      'housing: 3.8 days on average, expected 3.0 (2.4 to 3.5), slower.',
    );
    const right = replayFixture();
    const same = { ...right, parts: right.parts.map((one) => ({ ...one, outcome: 'as modelled' as const })) };
    expect(replayChartsOf(same, size)[2]?.title).toContain('Every part takes as long as modelled');
  });
});
