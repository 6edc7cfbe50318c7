import { describe, expect, it } from 'vitest';
import { BinSums } from './bin-sums.ts';

describe('BinSums', () => {
  it('adds to a bin, and to all bins from one on', () => {
    const sums = new BinSums(4);
    sums.addToBin(1, 5);
    sums.addChange(1, 2);
    sums.addChange(3, -2);
    expect([...sums.totals(10)]).toEqual([0, 25, 20, 0]);
    sums.clear();
    expect([...sums.totals(10)]).toEqual([0, 0, 0, 0]);
  });

  it('leaves nothing worth a name of what was added and taken away, in whatever order', () => {
    const sums = new BinSums(3);
    const weights = [0.1, 1 / 3, 1e9, 0.7, 1e-9];
    for (const weight of weights) sums.addChange(0, weight);
    for (const weight of [...weights].reverse()) sums.addChange(0, -weight);
    for (const weight of weights) sums.addChange(1, weight);
    for (const weight of weights) sums.addChange(2, -weight);
    const totals = sums.totals(3_600_000);
    // Plain additions leave 3,600,000 times 5e-8 here.
    expect(Math.abs(totals[0] ?? Number.NaN)).toBeLessThan(1e-15);
    expect(Math.abs(totals[2] ?? Number.NaN)).toBeLessThan(1e-15);
    // Exactly 3,600,000,004,080,000.0036; doubles are half a unit apart there.
    expect(totals[1]).toBe(3_600_000_004_080_000);
  });

  it('keeps the small beside the large', () => {
    const sums = new BinSums(1);
    sums.addToBin(0, 1e16);
    for (let addition = 0; addition < 1000; addition++) sums.addToBin(0, 0.5);
    sums.addToBin(0, -1e16);
    expect(sums.totals(1)[0]).toBe(500);
  });
});
