import type { History } from '@buildweek/core';
import { COST_KINDS } from '@buildweek/results';
import { clopperPearsonInterval, meanInterval, ratioInterval } from '@buildweek/statistics';
import { describe, expect, it } from 'vitest';
import { economics, equipmentCost } from '../fixture/economics.ts';
import { benchHours, history, peopleHistory } from '../fixture/history.ts';
import { batch, constant, lab, part, people, station } from '../fixture/lab.ts';
import { caseBasis, caseOfPeriod } from './business-case.ts';
import { medianOverPeriods } from './median-over-periods.ts';
import { MoneySums } from './money-sums.ts';
import { periodCosts } from './period-costs.ts';

const testLab = lab({
  stations: [station('washer')],
  people: [people('technicians', 1, [])],
  parts: [part('lever', [batch('wash', 'washer', constant(1))])],
});
const costs = economics({
  interest: 0.08,
  equipment: [equipmentCost('washer', { price: 60_000 })],
  people: [{ group: 'technicians', perHour: 40, overtimeSupplement: 0 }],
  parts: [{ part: 'lever', material: 2, outside: 30 }],
});

/** One week each, with these numbers of pieces. */
function weekOf(pieces: number, replication: number): History {
  return history(replication, {
    weeks: {
      arrivedJobs: Float64Array.of(pieces),
      promisedJobs: Float64Array.of(pieces),
      onTimeJobs: Float64Array.of(pieces),
      finishedJobs: Float64Array.of(pieces / 2),
      finishedParts: Float64Array.of(pieces),
      jobsInLab: Float64Array.of(1),
    },
    partHours: [
      {
        ...benchHours('lever', 0, 0, {}),
        madePieces: pieces,
        madeJobs: pieces / 2,
        repeatedPieces: pieces / 10,
      },
    ],
    people: [peopleHistory('technicians', [{ work: 40 }])],
  });
}

const PIECES = Array.from({ length: 40 }, (_, index) => 60 + ((index * 17) % 40));
const played = PIECES.map(weekOf);
const sumsOf = (spoken = costs, histories: readonly History[] = played): MoneySums => {
  const sums = new MoneySums(testLab, spoken);
  for (const one of histories) sums.add(one);
  return sums;
};

describe('money over replications', () => {
  const found = sumsOf().results(0.95);
  const periods = played.map((one) => periodCosts(testLab, costs, one));
  const cases = periods.map((one) => caseOfPeriod(caseBasis(testLab, costs), one));

  it('gives the cost of a part as a ratio of sums, with its interval', () => {
    const expected = ratioInterval(
      periods.map(({ total }) => total),
      PIECES,
      0.95,
    );
    expect(found.total.perPart).toMatchObject({
      kind: 'estimate',
      value: expect.closeTo(expected.value, 9),
      low: expect.closeTo(expected.low, 9),
      high: expect.closeTo(expected.high, 9),
    });
  });

  it('has kinds that add up to the total, and leaves out those that cost nothing', () => {
    expect(found.costs.map(({ kind }) => kind)).toEqual(['equipment', 'people', 'material']);
    const sum = found.costs.reduce((all, { perYear }) => all + perYear.value, 0);
    expect(sum).toBeCloseTo(found.total.perYear.value, 6);
    expect(COST_KINDS).toHaveLength(7);
    expect(found.repeats.perYear.value).toBeCloseTo((found.costs[2]?.perYear.value ?? 0) / 11, 6);
  });

  it('gives the interval of the mean for the net present value', () => {
    const values = cases.map(({ netPresentValue }) => netPresentValue);
    const { value, low, high } = meanInterval(values, 0.95);
    expect(found.case).toMatchObject({
      kind: 'compared',
      netPresentValue: {
        value: expect.closeTo(value, 6),
        low: expect.closeTo(low, 6),
        high: expect.closeTo(high, 6),
      },
    });
  });

  it('counts the replications that pay back in time, with the exact interval', () => {
    const inTime = cases.filter(({ paybackYears }) => paybackYears <= 3).length;
    expect(inTime).toBeGreaterThan(0);
    expect(inTime).toBeLessThan(40);
    expect(found.case).toMatchObject({ paidBackInTime: clopperPearsonInterval(inTime, 40, 0.95) });
  });

  it('says which parts have no price outside, and gives no part of a comparison', () => {
    const without = { ...costs, parts: [{ part: 'lever', material: 2, outside: null }] };
    const money = sumsOf(without).results(0.95);
    expect(money.case).toEqual({
      kind: 'not compared',
      reason:
        'What "lever" costs outside is not stated: without "price outside" at every part that is asked for, the lab cannot be set against sending everything out.',
    });
    expect(money.total.perPart.kind).toBe('estimate');
  });

  it('has nothing to pay back where nothing is bought', () => {
    const owned = { ...costs, equipment: [equipmentCost('washer', { owned: 1 })] };
    const reason = 'Nothing has to be bought, so that there is nothing to pay back.';
    expect(sumsOf(owned).results(0.95).case).toMatchObject({
      paybackYears: { kind: 'refused', reason },
      internalRate: { kind: 'refused', reason },
      paidBackInTime: { kind: 'refused', reason },
    });
  });

  it('says so where no part was finished', () => {
    const idle = sumsOf(
      costs,
      Array.from({ length: 20 }, (_, index) => weekOf(0, index)),
    );
    expect(idle.results(0.95).total.perPart).toEqual({ kind: 'refused', reason: 'No part was finished.' });
  });

  it('needs twenty replications', () => {
    expect(() => sumsOf(costs, played.slice(0, 19)).results(0.95)).toThrow('at least 20 replications');
  });
});

describe('the median of what may be infinite', () => {
  const values = Array.from({ length: 40 }, (_, index) => index);

  it('has its distribution-free interval', () => {
    // Ranks 14 and 27 of 40: by the binomial distribution they hold the median with 0.9615.
    expect(medianOverPeriods(values, 0.95, 'ever')).toMatchObject({ value: 19.5, low: 13, high: 26 });
  });

  it('is open where the interval reaches what is infinite', () => {
    const open = values.map((value) => (value > 25 ? Number.POSITIVE_INFINITY : value));
    expect(medianOverPeriods(open, 0.95, 'within 5 years')).toEqual({
      kind: 'never',
      reason: 'In 14 of 40 replications it does not pay back within 5 years.',
    });
    const closed = values.map((value) => (value > 26 ? Number.POSITIVE_INFINITY : value));
    expect(medianOverPeriods(closed, 0.95, 'within 5 years').kind).toBe('estimate');
  });
});
