import { describe, expect, it } from 'vitest';
import { economics, equipmentCost } from '../fixture/economics.ts';
import { batch, build, constant, lab, machine, part, station } from '../fixture/lab.ts';
import { caseBasis, caseOfPeriod, withoutOutsidePrice } from './business-case.ts';
import { capitalFlows, sharesMade, upkeepFlows } from './equipment-flows.ts';
import type { PeriodCosts } from './period-costs.ts';
import { WEEKS_PER_YEAR } from './roster-hours.ts';

const lever = part('lever', [build('build', 'printer'), batch('wash', 'washer', constant(1))]);
const testLab = lab({
  machines: [machine('printer', { count: 2 })],
  stations: [station('washer')],
  parts: [lever],
});

/** Costs of a quarter of a year that made so many pieces in as many jobs. */
function quarter(pieces: number, material: number, more: Partial<PeriodCosts['byKind']> = {}): PeriodCosts {
  const byKind = {
    ...{ equipment: 0, upkeep: 0, people: 0, overtime: 0, material, outside: 0, other: 0 },
    ...more,
  };
  return {
    weeks: WEEKS_PER_YEAR / 4,
    byKind,
    total: 0,
    repeats: 0,
    finishedParts: pieces,
    finishedJobs: pieces,
    parts: [
      { part: 'lever', madeJobs: pieces, madePieces: pieces, sentOutJobs: 0, sentOutPieces: 0, material },
    ],
  };
}

describe('the lab against sending everything out', () => {
  it('is N04 of the published cases for one machine of five years', () => {
    // 60000 to buy, 1900 parts a year at 28 instead of 11.5, 9000 a year beside, worth 8000 at the end, 12 %.
    const costs = economics({
      interest: 0.12,
      equipment: [
        equipmentCost('printer', { price: 30_000, residualValue: 4000, yearlyCost: 4500 }),
        equipmentCost('washer', { price: 0 }),
      ],
      parts: [{ part: 'lever', material: 11.5, outside: 28 }],
    });
    const found = caseOfPeriod(caseBasis(testLab, costs), quarter(475, 475 * 11.5));
    expect(found.savedPerYear).toBeCloseTo(22_350, 8);
    expect(found.outsidePerYear).toBeCloseTo(53_200, 8);
    expect(found.netPresentValue).toBeCloseTo(25_106.162968159715, 6);
    expect(found.paybackYears).toBeCloseTo(2.684563758389262, 10);
    expect(found.internalRate).toBeCloseTo(0.271158580171907, 10);
  });

  it('buys outside what equipment would have made that is not there yet', () => {
    const half = WEEKS_PER_YEAR / 2;
    const costs = economics({
      years: 2,
      equipment: [
        equipmentCost('printer', { price: 500, yearlyCost: 100, leadWeeks: half, lifeYears: 2 }),
        equipmentCost('washer', { price: 0, owned: 1, yearlyCost: 40 }),
      ],
      parts: [{ part: 'lever', material: 1, outside: 10 }],
      outsidePerJob: 2,
    });
    const found = caseOfPeriod(caseBasis(testLab, costs), quarter(100, 100, { people: 50, other: 25 }));
    // All outside: 400 pieces at 12. Every year 200 for people and 100 for the rest.
    const first = 4800 - (100 + 40 + 300 + 200 + 2400);
    const second = 4800 - (200 + 40 + 300 + 400);
    expect(found.flows).toEqual([-1000, expect.closeTo(first, 8), expect.closeTo(second, 8)]);
    expect(found.savedPerYear).toBeCloseTo(second, 8);
  });

  it('never pays back where pieces are cheaper outside', () => {
    const costs = economics({
      equipment: [equipmentCost('printer'), equipmentCost('washer')],
      parts: [{ part: 'lever', material: 10, outside: 9 }],
    });
    const found = caseOfPeriod(caseBasis(testLab, costs), quarter(100, 1000));
    expect(found.netPresentValue).toBeLessThan(0);
    expect(found.paybackYears).toBe(Number.POSITIVE_INFINITY);
    expect(found.internalRate).toBeNull();
  });

  it('knows which parts cannot be compared', () => {
    const costs = economics({
      parts: [
        { part: 'lever', material: 1, outside: null },
        { part: 'nobody asks', material: 1, outside: null },
      ],
    });
    expect(withoutOutsidePrice(testLab, costs)).toEqual(['lever']);
  });
});

describe('equipment over the years', () => {
  const costs = economics({
    years: 5,
    equipment: [
      equipmentCost('printer', { price: 900, lifeYears: 2, residualValue: 100, owned: 1, yearlyCost: 50 }),
      equipmentCost('washer', { price: 300, lifeYears: 10, leadWeeks: 13, rampUpWeeks: 26, yearlyCost: 10 }),
    ],
  });

  it('is bought again at the end of its life, and the rest of its life counts at the end', () => {
    // One printer: at 0, 2 and 4 years; a year of the last is used. One washer of which half a life is left.
    expect(capitalFlows(testLab, costs)).toEqual([-1200, 0, -800, 0, -800, 500 + 150]);
    const short = economics({
      years: 3,
      equipment: [equipmentCost('printer', { price: 100, lifeYears: 1.5 })],
    });
    expect(capitalFlows(testLab, short)).toEqual([-200, 0, -200, 0]);
  });

  it('is kept up once it is there', () => {
    const [first = 0, second] = upkeepFlows(testLab, costs);
    expect(first).toBeCloseTo(100 + 10 * (1 - 13 / WEEKS_PER_YEAR), 9);
    expect(second).toBeCloseTo(110, 9);
  });

  it('gives what its scarcest group gives, rising evenly after the lead', () => {
    const [first = 0, second] = sharesMade(testLab, costs, lever);
    // 13 weeks of nothing, 26 of half on average.
    expect(first).toBeCloseTo(1 - 26 / WEEKS_PER_YEAR, 9);
    expect(second).toBeCloseTo(1, 9);
    const late = { ...costs, equipment: [equipmentCost('printer', { owned: 1, leadWeeks: 1000 })] };
    expect(sharesMade(testLab, late, lever)).toEqual([0.5, 0.5, 0.5, 0.5, 0.5]);
  });
});
