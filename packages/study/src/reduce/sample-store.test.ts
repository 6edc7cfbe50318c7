import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SampleStore } from './sample-store.ts';

describe('SampleStore', () => {
  it('gives back the sample of every replication, in the unit asked for', () => {
    const anySample = fc.array(fc.integer({ min: 0, max: 1e9 }), { maxLength: 900 });
    fc.assert(
      fc.property(fc.array(anySample, { maxLength: 30 }), (samples) => {
        const store = new SampleStore();
        for (const sample of samples) store.add(Float64Array.from(sample), 4);
        expect(store.samples().map((sample) => [...sample])).toEqual(
          samples.map((sample) => sample.map((value) => value / 4)),
        );
      }),
    );
  });

  it('holds a sample that is larger than any chunk', () => {
    const store = new SampleStore();
    store.add(Float64Array.of(1, 2), 1);
    store.add(new Float64Array(200_000).fill(3), 1);
    store.add(Float64Array.of(4), 1);
    expect(store.samples().map((sample) => [sample.length, sample.at(-1)])).toEqual([
      [2, 2],
      [200_000, 3],
      [1, 4],
    ]);
  });
});
