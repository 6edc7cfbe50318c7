import { describe, expect, it } from 'vitest';
import { percentilesOf } from './percentiles.ts';

describe('percentilesOf', () => {
  it('gives for one period what the middle of the periods themselves had', () => {
    // Period r has the lead times r, 2 r, … 20 r: its own half-way point is 10 r.
    const samples = Array.from({ length: 40 }, (_, period) =>
      Float64Array.from({ length: 20 }, (__, job) => (period + 1) * (job + 1)),
    );
    const [half] = percentilesOf(
      samples,
      samples.map(() => 0),
      0.9,
    );
    // With 40 periods the 2nd smallest and the 2nd largest hold the next one with probability 37 / 41 = 0.902.
    expect(half?.onePeriod).toMatchObject({ kind: 'prediction', low: 20, high: 390 });
  });

  it('gives no percentile of one period with fewer than one job beyond it', () => {
    const samples = Array.from({ length: 200 }, () => Float64Array.of(1, 2, 3, 4, 5, 6));
    const found = percentilesOf(
      samples,
      samples.map(() => 0),
      0.95,
    );
    expect(found[1]?.onePeriod.kind).toBe('prediction');
    expect(found[2]?.onePeriod).toEqual({
      kind: 'refused',
      reason: 'One period has 6 such jobs on average, too few for a 90 % point of its own.',
    });
  });

  it('says never for one period when the point lies beyond the end too often', () => {
    const samples = Array.from({ length: 40 }, () => Float64Array.of(1, 2));
    expect(
      percentilesOf(
        samples,
        samples.map(() => 3),
        0.9,
      )[0]?.onePeriod.kind,
    ).toBe('never');
  });
});
