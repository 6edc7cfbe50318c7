import { describe, expect, it } from 'vitest';
import { capitalRecovery, futureWorthOfAnnuity, presentWorth, presentWorthOfAnnuity } from './annuity.ts';
import { breakEvenPartsPerYear } from './break-even.ts';
import { doubleDeclining, straightLine, sumOfYears } from './depreciation.ts';
import { equivalentAnnualCost } from './equivalent-annual-cost.ts';
import { internalRate } from './internal-rate.ts';
import { costOfBuild, costPerGoodPart, machineHourRate } from './machine-hour-rate.ts';
import { discountedPaybackYears, paybackYears } from './payback.ts';
import { netPresentValue, presentValueFromYearOne } from './present-value.ts';
import { type PublishedCostInput, publishedCostPerPart } from './published-cost-model.ts';
import { fullTimePeople } from './staffing.ts';

/** Each value in all the digits that are listed for it. */
function expectAll(found: readonly number[], expected: readonly number[]): void {
  expect(found).toHaveLength(expected.length);
  expected.forEach((value, index) => {
    expect(Math.abs((found[index] as number) - value)).toBeLessThanOrEqual(
      1e-12 * Math.max(1, Math.abs(value)),
    );
  });
}

/** Nine tenths of a year of building, written off in eight years, an operator at 5.30 an hour. */
const COMMON = { hoursPerYear: 0.9 * 8760, lifeYears: 8, operatorPerHour: 5.3 };

describe('published and recomputed cases of engineering economy', () => {
  it('N01: a textbook cash flow at 10 %', () => {
    const flows = [-10_000, 3000, 4200, 6800];
    expectAll(
      [
        netPresentValue(flows, 0.1),
        presentValueFromYearOne(flows, 0.1),
        internalRate(flows) ?? Number.NaN,
        paybackYears(flows),
        discountedPaybackYears(flows, 0.1),
      ],
      [1307.287753568743, 1188.4434123352207, 0.1634056006889893, 2.411764705882353, 2.7441176470588236],
    );
  });

  it('N02: interest factors at 10 % over 5 years, in tables 3.7908, .2638, 6.1051, .6209', () => {
    expectAll(
      [presentWorthOfAnnuity, capitalRecovery, futureWorthOfAnnuity, presentWorth].map((factor) =>
        factor(0.1, 5),
      ),
      [3.7907867694084505, 0.26379748079474524, 6.1051000000000055, 0.6209213230591549],
    );
  });

  it('N03: equivalent annual cost of machines of unequal lives', () => {
    const x = { price: 25_000, lifeYears: 5, residualValue: 4000, yearlyCost: 3000 };
    const y = { price: 40_000, lifeYears: 8, residualValue: 6000, yearlyCost: 2200 };
    expectAll(
      [equivalentAnnualCost(x, 0.08), equivalentAnnualCost(y, 0.08)],
      [8579.585545903565, 8596.501860121953],
    );
  });

  it('N04: making against buying outside', () => {
    const annual = 1900 * (28 - 11.5) - 9000;
    const flows = [-60_000, annual, annual, annual, annual, annual + 8000];
    const question = {
      price: 60_000,
      lifeYears: 5,
      residualValue: 8000,
      fixedPerYear: 9000,
      savedPerPart: 28 - 11.5,
    };
    expectAll(
      [
        annual,
        paybackYears(flows),
        netPresentValue(flows, 0.12),
        breakEvenPartsPerYear(question, 0.12),
        internalRate(flows) ?? Number.NaN,
      ],
      [22_350, 2.684563758389262, 25_106.162968159715, 1477.8973370263354, 0.271158580171907],
    );
  });

  it('N05: depreciation of 12000 to 2000 in 5 years', () => {
    expectAll(straightLine(12_000, 2000, 5), [2000, 2000, 2000, 2000, 2000]);
    expectAll(
      sumOfYears(12_000, 2000, 5),
      [3333.3333333333335, 2666.6666666666665, 2000, 1333.3333333333333, 666.6666666666666],
    );
    expectAll(doubleDeclining(12_000, 2000, 5), [4800, 2880, 1728, 592, 0]);
  });

  it('N06: machine-hour rate, and cost of a part where builds fail', () => {
    const ratePerHour = machineHourRate({
      price: 30_000,
      lifeYears: 5,
      yearlyCost: 0.08 * 30_000,
      productiveHours: 4000,
      energyPerHour: 0.6 * 0.25,
    });
    const build = costOfBuild({
      machineHours: 14,
      ratePerHour,
      material: 1.2 * 55,
      labourHours: 1.5,
      labourPerHour: 38,
    });
    expectAll(
      [ratePerHour, build, costPerGoodPart(build, 40, 0), costPerGoodPart(build, 40, 0.08)],
      [2.25, 154.5, 3.8625, 4.198369565217391],
    );
  });

  it('N07: staffing', () => {
    const twoShifts = fullTimePeople(5 * 16, 40);
    expectAll(
      [fullTimePeople(168, 40), fullTimePeople(168, 40, 30 / 260), twoShifts, twoShifts * 52_000],
      [4.2, 4.747826086956522, 2, 104_000],
    );
  });

  // N. Hopkinson and P. M. Dickens (2003), small lever part; input from memory, published totals 5.25, 4.47, 2.20.
  it.each<[string, Omit<PublishedCostInput, keyof typeof COMMON>, number[], string[]]>([
    [
      'VPP with a laser',
      {
        partsPerBuild: 190,
        buildHours: 26.8,
        equipment: 1_040_000,
        maintenancePerYear: 89_000,
        setUpMinutes: 33,
        postProcessingMinutes: 49,
        materialPerPart: 1.29,
      },
      [7.08955223880597, 55_894.029850746265],
      ['3.9181', '0.0381', '1.2900', '5.2463'],
    ],
    [
      'MEX',
      {
        partsPerBuild: 75,
        buildHours: 67.27,
        equipment: 101_280,
        maintenancePerYear: 10_560,
        setUpMinutes: 10,
        postProcessingMinutes: 60,
        materialPerPart: 1.75,
      },
      [1.1149100639215104, 8789.950943957188],
      ['2.6417', '0.0824', '1.7500', '4.4741'],
    ],
    [
      'PBF',
      {
        partsPerBuild: 1056,
        buildHours: 59.78,
        equipment: 340_000,
        maintenancePerYear: 30_450,
        setUpMinutes: 120,
        postProcessingMinutes: 360,
        materialPerPart: 1.64,
      },
      [17.66477082636333, 139_269.0531950485],
      ['0.5238', '0.0402', '1.6400', '2.2040'],
    ],
  ])('N08: the published cost of a part, %s', (_, input, rates, costs) => {
    const found = publishedCostPerPart({
      ...COMMON,
      ...input,
    });
    expectAll([found.partsPerHour, found.partsPerYear], rates);
    expect([found.machine, found.labour, found.material, found.total].map((cost) => cost.toFixed(4))).toEqual(
      costs,
    );
  });
});
