import type { CountVariation, Variation } from '@buildweek/model';
import { type DecisionOption, type ShownPlan, SPEED_MEASURE } from '@buildweek/results';
import { type CandidatePlan, withOther } from '../plans/plan-space.ts';
import { variationName, variationPlace } from '../plans/variation-name.ts';

/** One of the few plans among which is decided, with the lab to play. */
export interface OptionPlan {
  readonly role: DecisionOption['role'];
  readonly plan: CandidatePlan;
  /** As the search shows it. */
  readonly shown: ShownPlan;
}

/**
 * The few plans among which leadership decides: today's, the one that is recommended, a cheaper one, a faster one;
 * each at most once, and only what there is.
 *
 * @param shown what a search shows, as `explainPlan` gives it
 * @param plans all of the search
 */
export function optionPlans(
  shown: readonly ShownPlan[],
  plans: readonly CandidatePlan[],
  counts: readonly CountVariation[],
): OptionPlan[] {
  const recommended = shown.find(({ role }) => role === 'chosen') ?? closestOf(shown);
  const today = shown.find(({ isToday }) => isToday);
  const picked: [DecisionOption['role'], ShownPlan | undefined][] = [
    ['today', today],
    ['recommended', recommended],
    ['cheaper', cheaperThan(recommended, shown)],
    ['faster', fasterOf(shown)],
  ];
  const options: OptionPlan[] = [];
  for (const [role, one] of picked) {
    // The recommendation may be to leave everything as it is; then it is told once, as today's.
    if (one === undefined || options.some((option) => option.shown.name === one.name)) continue;
    const plan = planOf(one, plans, counts);
    if (plan !== null) options.push({ role, plan, shown: one });
  }
  return options;
}

/** Where no plan meets its targets: the one whose worst target is missed by least. */
function closestOf(shown: readonly ShownPlan[]): ShownPlan | undefined {
  return shown
    .filter(({ role }) => role !== 'one more' && role !== 'one fewer')
    .toSorted((one, other) => worstSurplus(other) - worstSurplus(one))[0];
}

/** By how much the worst target is surpassed; below 0 it is missed. */
function worstSurplus({ targets }: ShownPlan): number {
  return Math.min(
    ...targets.map(({ value, asked, better }) => {
      if (value.kind !== 'estimate') return Number.NEGATIVE_INFINITY;
      return better === 'lower' ? asked - value.value : value.value - asked;
    }),
  );
}

/** Of the plans that cost less than the recommendation the one that misses by least: what a saving would cost. */
function cheaperThan(recommended: ShownPlan | undefined, shown: readonly ShownPlan[]): ShownPlan | undefined {
  const most = recommended?.committedCost ?? null;
  if (most === null) return undefined;
  return shown
    .filter(
      ({ role, isToday, committedCost }) =>
        (role === 'near miss' || role === 'next below') &&
        !isToday &&
        committedCost !== null &&
        committedCost < most,
    )
    .toSorted((one, other) => worstSurplus(other) - worstSurplus(one))[0];
}

/** One more of what makes nine of ten jobs fastest, where that can be told. */
function fasterOf(shown: readonly ShownPlan[]): ShownPlan | undefined {
  const gains = shown
    .filter(({ role }) => role === 'one more')
    .flatMap((plan) => {
      const found = plan.againstChosen.find(({ measure }) => measure === SPEED_MEASURE);
      return found?.outcome === 'better' && found.difference.kind === 'estimate'
        ? [{ plan, gain: -found.difference.value }]
        : [];
    });
  return gains.toSorted((one, other) => other.gain - one.gain)[0]?.plan;
}

/** A plan of the search, or one that lies next to its ranges. */
function planOf(
  { name, choices }: ShownPlan,
  plans: readonly CandidatePlan[],
  counts: readonly CountVariation[],
): CandidatePlan | null {
  const known = plans.find((plan) => plan.name === name);
  if (known !== undefined) return known;
  const isCount = (what: string): boolean => counts.some(({ group }) => group === what);
  const base = plans.find((plan) =>
    choices.every(
      ({ what, value }) =>
        isCount(what) || plan.choices.find((choice) => choice.what === what)?.value === value,
    ),
  );
  if (base === undefined) return null;
  return counts.reduce((plan, variation) => {
    const value = choices.find(({ what }) => what === variation.group)?.value;
    return value === undefined ? plan : withOther(plan, variation, Number(value));
  }, base);
}

/** A choice that differs from today's. */
export interface ChangedChoice {
  readonly what: string;
  readonly from: string;
  readonly to: string;
  /** As --with takes it. */
  readonly change: string;
}

/**
 * What of a plan differs from today.
 * @param today the values of today by the names of the variations
 */
export function changedChoices(
  choices: ShownPlan['choices'],
  today: readonly { readonly what: string; readonly today: string }[],
  variations: readonly Variation[],
): ChangedChoice[] {
  return variations.flatMap((variation) => {
    const what = variationName(variation);
    const to = choices.find((choice) => choice.what === what)?.value;
    const from = today.find((one) => one.what === what)?.today ?? '';
    return to === undefined || to === from
      ? []
      : [{ what, from, to, change: `${variationPlace(variation)}: ${to}` }];
  });
}
