import { FACTORS, type Factor, type StaffOption, usualStaffOptions } from '@buildweek/scenario';
import type { ReadPlan } from './read-plan.ts';

/** Sections of a scenario whose groups can be counted. */
const COUNTED = ['people', 'machines', 'stations'] as const;
export type Counted = (typeof COUNTED)[number];

/** How many there are of a group. */
export interface CountControl {
  readonly id: string;
  readonly of: Counted;
  readonly group: string;
  /** As the plan has it. */
  readonly present: number;
  readonly low: number;
  readonly high: number;
  /** Whether the bounds are those that the scenario gives under `may vary`: it refuses others. */
  readonly isStated: boolean;
}

/** A factor on something, in per cent of what the plan says. */
export interface FactorControl {
  readonly id: Factor;
  readonly low: number;
  readonly high: number;
  /** How far the truth may lie from the plan, as the scenario says; null: it does not. */
  readonly stated: readonly [from: number, to: number] | null;
}

/** What a reader of the page may change. */
export interface Controls {
  readonly counts: readonly CountControl[];
  readonly factors: readonly FactorControl[];
  /** Other hours and skills of people. */
  readonly hours: readonly StaffOption[];
}

/** Where the scenario says nothing, a factor goes from half to double. */
const USUAL_FACTORS = [50, 200] as const;
/** Where it does not say what may vary, a count goes from none to double, or so many more. */
const MORE_OF_ANY = 3;

/** What can be changed of a plan, within bounds of the scenario where it states some. */
export function controlsOf(plan: ReadPlan, text: string): Controls {
  return { counts: countsOf(plan), factors: factorsOf(plan), hours: hoursOf(plan, text) };
}

function countsOf({ lab, variations }: ReadPlan): CountControl[] {
  return COUNTED.flatMap((of) =>
    lab[of].map(({ name, count }): CountControl => {
      const variation = variations.find((one) => one.kind === 'count' && one.of === of && one.group === name);
      const control = { id: `${of}/${name}`, of, group: name, present: count };
      return variation?.kind === 'count'
        ? { ...control, low: variation.from, high: variation.to, isStated: true }
        : { ...control, low: 0, high: Math.max(2 * count, count + MORE_OF_ANY), isStated: false };
    }),
  );
}

function factorsOf({ lab, doubts }: ReadPlan): FactorControl[] {
  const isThere: Readonly<Record<Factor, boolean>> = {
    demand: lab.demand.some(({ arrivals: { kind } }) => kind === 'poisson' || kind === 'renewal'),
    'failed builds': lab.machines.some(({ failure }) => failure !== null),
    breakdowns: [...lab.machines, ...lab.stations].some(({ breakdowns }) => breakdowns.length > 0),
  };
  return FACTORS.filter((factor) => isThere[factor]).map((id): FactorControl => {
    const doubt = doubts?.find(({ about }) => about.kind === id && about.of === null);
    const stated =
      doubt === undefined ? null : ([Math.round(doubt.low * 100), Math.round(doubt.high * 100)] as const);
    const [low, high] = USUAL_FACTORS;
    return { id, low: Math.min(low, stated?.[0] ?? low), high: Math.max(high, stated?.[1] ?? high), stated };
  });
}

/** Options of hours that the scenario states, and those that the program makes; numbers have controls of their own. */
export function hoursOf({ scenario }: Pick<ReadPlan, 'scenario'>, text: string): StaffOption[] {
  const stated = scenario.staff.options;
  const names = new Set(stated.map(({ name }) => name));
  return [...stated, ...usualStaffOptions(scenario, text).filter(({ name }) => !names.has(name))].filter(
    ({ changes }) => changes.some(({ path }) => path.at(-1) !== 'count'),
  );
}
