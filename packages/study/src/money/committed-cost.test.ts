import { describe, expect, it } from 'vitest';
import { economics, equipmentCost } from '../fixture/economics.ts';
import { lab, machine, people, station } from '../fixture/lab.ts';
import { committedCost, committedCostPerYear, purchases } from './committed-cost.ts';

const twoMachines = lab({
  machines: [machine('resin', { count: 2 })],
  stations: [station('washer')],
  people: [people('technicians', 2, [])],
});

describe('what a lab costs whatever it does', () => {
  it('is equivalent annual cost and upkeep of every machine and station, the roster, and the rest', () => {
    const costs = economics({
      interest: 0.08,
      // N03 of the published cases: 5579.585545903565 and 6396.501860121953 without the yearly cost.
      equipment: [
        equipmentCost('resin', { price: 25_000, residualValue: 4000, yearlyCost: 3000, owned: 1 }),
        equipmentCost('washer', { price: 40_000, lifeYears: 8, residualValue: 6000, yearlyCost: 2200 }),
      ],
      people: [{ group: 'technicians', perHour: 41, overtimeSupplement: 0 }],
      otherPerYear: 12_000,
    });
    const found = committedCost(twoMachines, costs);
    expect(found.equipment.map(({ capitalPerYear }) => capitalPerYear)).toEqual([
      expect.closeTo(2 * 5579.585545903565, 8),
      expect.closeTo(6396.501860121953, 8),
    ]);
    expect(found.equipment.map(({ upkeepPerYear }) => upkeepPerYear)).toEqual([6000, 2200]);
    // Two persons of 40 hours a week.
    const hours = (2 * 40 * 365.25) / 7;
    expect(found.people).toEqual([
      {
        group: 'technicians',
        count: 2,
        hoursPerYear: expect.closeTo(hours, 8),
        perYear: expect.closeTo(41 * hours, 6),
      },
    ]);
    expect(found.perYear).toBeCloseTo(2 * 8579.585545903565 + 8596.501860121953 + 41 * hours + 12_000, 6);
    expect(committedCostPerYear(twoMachines, costs)).toBe(found.perYear);
  });

  it('goes by the numbers of the lab, so that plans can be compared', () => {
    const costs = economics({ equipment: [equipmentCost('resin')] });
    const more = { ...twoMachines, machines: [machine('resin', { count: 5 })] };
    expect(committedCostPerYear(more, costs) - committedCostPerYear(twoMachines, costs)).toBeCloseTo(
      3 * 200,
      10,
    );
  });

  it('pays people on closing days, and for additional windows', () => {
    const [day] = twoMachines.calendars;
    if (day === undefined) throw new Error('The lab has hours.');
    const rich = {
      ...twoMachines,
      calendars: [{ ...day, closedDays: [0, 1, 2], extra: [{ fromHour: 5 * 24 + 8, toHour: 5 * 24 + 12 }] }],
    };
    const costs = economics({ people: [{ group: 'technicians', perHour: 10, overtimeSupplement: 0 }] });
    expect(committedCostPerYear(rich, costs) - committedCostPerYear(twoMachines, costs)).toBeCloseTo(
      2 * 4 * 10,
      8,
    );
  });
});

describe('what has to be bought', () => {
  it('is what the lab has beyond what is owned', () => {
    const costs = economics({
      equipment: [equipmentCost('resin', { price: 3200, owned: 1 }), equipmentCost('washer', { owned: 1 })],
    });
    expect(purchases(twoMachines, costs)).toEqual([{ group: 'resin', count: 1, amount: 3200, leadWeeks: 0 }]);
    const fewer = { ...twoMachines, machines: [machine('resin', { count: 1 })] };
    expect(purchases(fewer, costs)).toEqual([]);
    const free = economics({ equipment: [equipmentCost('resin', { price: 0 })] });
    expect(purchases(twoMachines, free)).toEqual([]);
  });
});
