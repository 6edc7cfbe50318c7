import fc from 'fast-check';
import alea from 'seedrandom/lib/alea.js';
import { describe, expect, it } from 'vitest';
import { Alea } from './alea.ts';

const HALF_STEP = 2 ** -33;

function expectEqual(seed: string, draws: number): void {
  const reference = alea(seed).quick;
  const own = new Alea(seed);
  for (let draw = 0; draw < draws; draw++) expect(own.next()).toBe(reference() + HALF_STEP);
}

describe('Alea', () => {
  it('gives the numbers of the package seedrandom to the last bit, for a hundred thousand draws', () => {
    expectEqual('["spring",0,"arrivals","lens ring"]', 100_000);
  });

  it('gives the numbers of the package seedrandom for every seed, empty and of any characters', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.string({ minLength: 100 }), fc.constant('')),
        (seed) => {
          expectEqual(seed, 20);
        },
      ),
      { numRuns: 1000, seed: 1 },
    );
  });

  it('stays strictly between 0 and 1', () => {
    const generator = new Alea('spring');
    for (let draw = 0; draw < 10_000; draw++) {
      const u = generator.next();
      expect(u > 0 && u < 1).toBe(true);
    }
  });
});
