import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capitalRecovery, presentWorthOfAnnuity } from './annuity.ts';
import { breakEvenPartsPerYear } from './break-even.ts';
import { doubleDeclining, straightLine, sumOfYears } from './depreciation.ts';
import { capitalRecoveryCost, equivalentAnnualCost } from './equivalent-annual-cost.ts';
import { internalRate } from './internal-rate.ts';
import { discountedPaybackYears, paybackYears } from './payback.ts';
import { netPresentValue } from './present-value.ts';

const amount = fc.integer({ min: 0, max: 100_000 });
const rate = fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100);
const years = fc.integer({ min: 1, max: 30 });

describe('present value and internal rate', () => {
  it('is zero at the internal rate', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.array(amount, { minLength: 1, maxLength: 10 }),
        (price, returns) => {
          const flows = [-price, ...returns];
          const found = internalRate(flows);
          if (found === null || found === 100) return;
          const scale = flows.reduce((sum, flow, year) => sum + Math.abs(flow) / (1 + found) ** year, 0);
          expect(Math.abs(netPresentValue(flows, found))).toBeLessThan(1e-9 * scale);
        },
      ),
    );
  });

  it('has no rate for flows without a change of sign, and none where there may be two', () => {
    expect(internalRate([-100, 0, 0])).toBeNull();
    expect(internalRate([0, 50, 50])).toBeNull();
    // Worth nothing at 10 % and at 20 %.
    expect(internalRate([-100, 230, -132])).toBeNull();
    expect(internalRate([100, -120])).toBeNull();
  });

  it('has a rate where a machine is replaced on the way and the running total turns once', () => {
    const flows = [-100, 80, -20, 90, 90];
    const found = internalRate(flows) ?? Number.NaN;
    expect(netPresentValue(flows, found)).toBeCloseTo(0, 9);
    expect(found).toBeGreaterThan(0);
  });

  it('knows a rate below zero, where less comes back than was laid out', () => {
    expect(internalRate([-100, 50])).toBeCloseTo(-0.5, 12);
  });
});

describe('payback', () => {
  it('is never where too little comes back, and at once where nothing is laid out', () => {
    expect(paybackYears([-100, 30, 30])).toBe(Number.POSITIVE_INFINITY);
    expect(paybackYears([0, 10, 10])).toBe(0);
  });

  it('counts from when it has come back for good', () => {
    // Back after one year, out again for a replacement, back for good in the middle of the third.
    expect(paybackYears([-100, 100, -50, 100])).toBe(2.5);
  });

  it('is no shorter with interest, and within the years exactly when the present value is not negative', () => {
    fc.assert(
      fc.property(
        amount,
        fc.array(amount, { minLength: 1, maxLength: 8 }),
        rate,
        (price, returns, interest) => {
          const flows = [-price, ...returns];
          const payback = discountedPaybackYears(flows, interest);
          expect(payback).toBeGreaterThanOrEqual(paybackYears(flows));
          const value = netPresentValue(flows, interest);
          if (Math.abs(value) > 1e-6) expect(Number.isFinite(payback)).toBe(value > 0);
        },
      ),
    );
  });
});

describe('equivalent annual cost', () => {
  it('is straight-line without interest', () => {
    expect(
      equivalentAnnualCost({ price: 12_000, lifeYears: 5, residualValue: 2000, yearlyCost: 300 }, 0),
    ).toBeCloseTo(2300, 10);
  });

  it('paid at the end of each year is worth buying now and selling at the end', () => {
    fc.assert(
      fc.property(amount, amount, years, rate, (price, residualValue, lifeYears, interest) => {
        const yearly = capitalRecoveryCost({ price, lifeYears, residualValue }, interest);
        const flows = [price, ...Array.from({ length: lifeYears }, () => -yearly)];
        flows[lifeYears] = (flows[lifeYears] ?? 0) - residualValue;
        expect(Math.abs(netPresentValue(flows, interest))).toBeLessThan(1e-6);
      }),
    );
  });

  it('breaks even where the equivalent annual cost is what the parts save', () => {
    const question = { price: 9000, lifeYears: 3, residualValue: 0, fixedPerYear: 100, savedPerPart: 2 };
    expect(breakEvenPartsPerYear(question, 0) * 2).toBeCloseTo(3100, 10);
    expect(breakEvenPartsPerYear({ ...question, savedPerPart: 0 }, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('has factors that do not lose their digits at small rates', () => {
    expect(presentWorthOfAnnuity(1e-12, 10)).toBeCloseTo(10, 9);
    expect(capitalRecovery(0, 4)).toBe(0.25);
  });
});

describe('depreciation', () => {
  it.each([
    ['straight line', straightLine],
    ['sum of years', sumOfYears],
  ])('writes down all but the residual value: %s', (_, method) => {
    fc.assert(
      fc.property(amount, amount, years, (one, other, life) => {
        const [residual, cost] = [Math.min(one, other), Math.max(one, other)];
        const written = method(cost, residual, life).reduce((sum, value) => sum + value, 0);
        expect(Math.abs(written - (cost - residual))).toBeLessThan(1e-6);
      }),
    );
  });

  it('never goes below the residual value by double declining', () => {
    fc.assert(
      fc.property(amount, amount, years, (one, other, life) => {
        const [residual, cost] = [Math.min(one, other), Math.max(one, other)];
        const written = doubleDeclining(cost, residual, life);
        expect(Math.min(...written)).toBeGreaterThanOrEqual(0);
        expect(written.reduce((sum, value) => sum + value, 0)).toBeLessThanOrEqual(cost - residual + 1e-6);
      }),
    );
  });

  it.each([
    [() => straightLine(100, 200, 5), /above the cost/],
    [() => straightLine(-1, 0, 5), /cannot be negative/],
    [() => sumOfYears(100, 0, 2.5), /whole number/],
    [() => capitalRecovery(0.1, 0), /above 0/],
    [() => netPresentValue([1], -1), /above -1/],
    [() => netPresentValue([Number.NaN], 0.1), /finite/],
  ])('refuses what cannot be', (call, message) => {
    expect(call).toThrow(message);
  });
});
