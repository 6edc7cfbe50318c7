import type { Lab } from '@buildweek/model';
import { pairedDifference, standardDeviation } from '@buildweek/statistics';
import { type ObservedPlans, type Plan, standardMeasures } from '@buildweek/study';
import { changedDemo } from './demo-plans.ts';

/** What today's demo is compared with, named before anything was measured. */
const CHANGES: readonly (readonly [name: string, change: string | ((lab: Lab) => Lab)])[] = [
  ['a third technician', 'technicians / count: 3'],
  ['a fourth resin machine', 'machines / resin / count: 4'],
  ['resin builds start when full or after 8 h', 'machines / resin / start: when full or after 8 h'],
  ['a tenth more demand', (lab) => ({ ...lab, demand: lab.demand.map(tenthMore) })],
  ['rush interrupts', 'dispatch / rush interrupts: yes'],
];
const MEASURES = ['nine of ten jobs within', 'jobs on time'] as const;
const REPLICATIONS = 200;

function tenthMore(stream: Lab['demand'][number]): Lab['demand'][number] {
  const { arrivals } = stream;
  if (arrivals.kind !== 'poisson') throw new Error('The demo asks for jobs at random.');
  return { ...stream, arrivals: { ...arrivals, perWeek: 1.1 * arrivals.perWeek } };
}

/** What common random numbers save in one comparison. */
export interface CommonNumbersGain {
  readonly change: string;
  readonly measure: string;
  /** (var A + var B) / var(A − B): how many times as many replications would be needed without. */
  readonly gain: number;
  /**
   * What it would be at a correlation of 1: with standard deviations a and b it is (a² + b²) / (a − b)². Little, where
   * one of the two plans hardly varies.
   */
  readonly atMost: number;
}

/** Plays today's demo and each changed one with the same random numbers. */
export async function gainsOfCommonNumbers(observed: ObservedPlans): Promise<CommonNumbersGain[]> {
  const today = changedDemo('today', null);
  const gains: CommonNumbersGain[] = [];
  for (const [name, change] of CHANGES) {
    const other = changedDemo(name, change);
    for (const measure of MEASURES) {
      const before = await valuesOf(observed, today, measure);
      const after = await valuesOf(observed, other, measure);
      gains.push({
        change: name,
        measure,
        gain: pairedDifference(before, after, 0.95).varianceReduction,
        atMost: gainAtMost(standardDeviation(before), standardDeviation(after)),
      });
    }
  }
  return gains;
}

function gainAtMost(one: number, other: number): number {
  return (one ** 2 + other ** 2) / (one - other) ** 2;
}

/** One value for each replication. */
async function valuesOf(observed: ObservedPlans, plan: Plan, measure: string): Promise<number[]> {
  const observations = await observed.observe(plan, REPLICATIONS);
  if (observations === null) throw new Error('Nobody stopped it.');
  const index = standardMeasures([plan.lab]).findIndex(({ name }) => name === measure);
  return observations.map((observation) => (observation[2 * index] ?? 0) / (observation[2 * index + 1] ?? 1));
}
