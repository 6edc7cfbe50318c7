import { describe, expect, it } from 'vitest';
import { economics, equipmentCost } from '../fixture/economics.ts';
import { lab, machine, people, station } from '../fixture/lab.ts';
import { counted } from '../fixture/plans.ts';
import { candidatePlans, countIn, type PlanVariant, withOther } from './plan-space.ts';

const BASE = lab({
  people: [people('technicians', 2, ['hands'])],
  machines: [machine('resin', { count: 1 })],
  stations: [station('washer')],
  carriers: [{ name: 'platforms', count: 3 }],
});
const TODAY: PlanVariant = { options: [], isToday: true, lab: BASE, economics: null };
const RESIN = counted('machines', 'resin', 1, 2);
const TECHNICIANS = counted('people', 'technicians', 2, 3);
const WASHER = counted('stations', 'washer', 1, 2);

function names(variants: readonly PlanVariant[], counts: Parameters<typeof candidatePlans>[1]): string[] {
  return candidatePlans(variants, counts).map(({ name }) => name);
}

describe('the plans of a scenario', () => {
  it('come by people, then machines, then stations and carriers, where nothing has a price', () => {
    expect(names([TODAY], [WASHER, RESIN, TECHNICIANS])).toEqual([
      'washer 1, resin 1, technicians 2',
      'washer 2, resin 1, technicians 2',
      'washer 1, resin 2, technicians 2',
      'washer 2, resin 2, technicians 2',
      'washer 1, resin 1, technicians 3',
      'washer 2, resin 1, technicians 3',
      'washer 1, resin 2, technicians 3',
      'washer 2, resin 2, technicians 3',
    ]);
  });

  it('come by what they cost in a year, whatever that is spent on', () => {
    // A technician costs 40 h × 365.25 / 7 × 1 EUR = 2087 a year, a resin machine a fifth of 20,000 EUR.
    const prices = economics({
      equipment: [
        equipmentCost('resin', { price: 20_000, owned: 1 }),
        equipmentCost('washer', { price: 500 }),
      ],
      people: [{ group: 'technicians', perHour: 1, overtimeSupplement: 0 }],
    });
    const plans = candidatePlans([{ ...TODAY, economics: prices }], [RESIN, TECHNICIANS]);
    expect(plans.map(({ name }) => name)).toEqual([
      'resin 1, technicians 2',
      'resin 1, technicians 3',
      'resin 2, technicians 2',
      'resin 2, technicians 3',
    ]);
    const [cheapest, , dearer] = plans;
    expect((dearer?.committedCost ?? 0) - (cheapest?.committedCost ?? 0)).toBeCloseTo(4000, 6);
    expect(plans.map(({ purchase }) => purchase)).toEqual([500, 500, 20_500, 20_500].map((sum) => sum - 0));
  });

  it('of one cost come by people first', () => {
    const prices = economics({ otherPerYear: 7 });
    const plans = candidatePlans([{ ...TODAY, economics: prices }], [RESIN, TECHNICIANS]);
    expect(new Set(plans.map(({ committedCost }) => committedCost))).toEqual(new Set([7]));
    expect(plans.map(({ name }) => name)).toEqual(names([TODAY], [RESIN, TECHNICIANS]));
  });

  it('may have none of something', () => {
    const plans = candidatePlans(
      [TODAY],
      [counted('carriers', 'platforms', 0, 3), counted('people', 'technicians', 0, 2)],
    );
    expect(plans).toHaveLength(12);
    expect(plans[0]?.name).toBe('platforms 0, technicians 0');
    expect(plans[0]?.lab.carriers[0]?.count).toBe(0);
    expect(plans[0]?.lab.people[0]?.count).toBe(0);
  });

  it('mark what is there today, once', () => {
    const other: PlanVariant = {
      ...TODAY,
      isToday: false,
      options: [{ what: 'technicians hours', value: 'late' }],
    };
    const as = { ...TODAY, options: [{ what: 'technicians hours', value: 'day' }] };
    const plans = candidatePlans([other, as], [RESIN, TECHNICIANS]);
    expect(plans.filter(({ isToday }) => isToday).map(({ name }) => name)).toEqual([
      'resin 1, technicians 2, technicians hours day',
    ]);
    expect(new Set(plans.map(({ name }) => name)).size).toBe(8);
  });

  it('have no today where the ranges leave it out', () => {
    expect(
      candidatePlans([TODAY], [counted('people', 'technicians', 3, 4)]).some(({ isToday }) => isToday),
    ).toBe(false);
  });

  it('leave the lab they come from as it is', () => {
    const before = JSON.stringify(BASE);
    candidatePlans([TODAY], [RESIN, TECHNICIANS]);
    expect(JSON.stringify(BASE)).toBe(before);
  });

  it('may be stepped outside the ranges, with prices of their own', () => {
    const prices = economics({ equipment: [equipmentCost('resin')] });
    const [plan] = candidatePlans([{ ...TODAY, economics: prices }], [RESIN]);
    if (plan === undefined) throw new Error('There is no plan.');
    const more = withOther(plan, RESIN, 5);
    expect([more.name, countIn(more.lab, RESIN), more.isToday]).toEqual(['resin 5', 5, false]);
    expect(more.economics).toBe(prices);
    expect(more.committedCost).toBeCloseTo(1000, 9);
    expect(more.purchase).toBe(5000);
  });
});
