import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DOES_NOT_FIT, FITS, FitMemory, NOT_KNOWN } from './fit-memory.ts';

describe('FitMemory', () => {
  it('recalls what was kept, for these counts alone', () => {
    const memory = new FitMemory(2, 4);
    expect(memory.recall(Int32Array.of(3, 1))).toBe(NOT_KNOWN);
    memory.keep(Int32Array.of(3, 1), FITS);
    expect(memory.recall(Int32Array.of(3, 1))).toBe(FITS);
    expect(memory.recall(Int32Array.of(1, 3))).toBe(NOT_KNOWN);
    expect(memory.recall(Int32Array.of(0, 0))).toBe(NOT_KNOWN);
  });

  it('never gives an answer for other counts, however few its places', () => {
    const counts = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 3, maxLength: 3 });
    const answerFor = (asked: readonly number[]) => ((asked[0] + asked[1]) % 2 === 0 ? FITS : DOES_NOT_FIT);
    fc.assert(
      fc.property(fc.array(counts, { maxLength: 200 }), fc.constantFrom(1, 2, 8), (questions, places) => {
        const memory = new FitMemory(3, places);
        for (const question of questions) {
          const asked = Int32Array.from(question);
          const answer = memory.recall(asked);
          if (answer !== NOT_KNOWN) expect(answer).toBe(answerFor(question));
          else memory.keep(asked, answerFor(question));
          expect(memory.recall(asked)).toBe(answerFor(question));
        }
      }),
    );
  });

  it('spreads the counts of usual builds over its places', () => {
    const memory = new FitMemory(3, 1024);
    const asked: Int32Array[] = [];
    for (let first = 0; first < 8; first++) {
      for (let second = 0; second < 8; second++) {
        for (let third = 0; third < 8; third++) asked.push(Int32Array.of(first, second, third));
      }
    }
    for (const counts of asked) {
      memory.recall(counts);
      memory.keep(counts, FITS);
    }
    const kept = asked.filter((counts) => memory.recall(counts) === FITS).length;
    // 512 counts thrown at random on 1024 places leave 1024 (1 - exp(-1/2)) = 403 of them.
    expect(kept).toBeGreaterThan(360);
  });
});
