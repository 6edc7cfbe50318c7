import type { CountVariation } from '@buildweek/model';
import type { ShownPlan, TargetOfPlan } from '@buildweek/results';
import type { CandidateReport } from '@buildweek/statistics';
import type { PlanSearch } from './find-plan.ts';
import type { Observation } from './observed-plans.ts';
import { type CandidatePlan, countIn, withOther } from './plan-space.ts';
import { type PlanRole, type Showing, shownPlan } from './shown-plan.ts';

/** Replications of every plan that is shown beside the answer, at least. */
const SHOWN_REPLICATIONS = 40;
/** So many plans that missed their targets narrowly are shown, and so many that were nearly as dear as the answer. */
const NARROWEST = 3;
const DEAREST = 2;
/** Plans along the range of cost that are shown for the frontier. */
const FRONTIER_PLANS = 6;

/** A plan that is to be shown. */
interface Asked {
  readonly plan: CandidatePlan;
  readonly role: PlanRole;
  readonly states: readonly TargetOfPlan['verdict'][];
}

/**
 * The answer of a search with what stands around it: today's plan, plans that missed narrowly and why, and what one
 * more or one fewer of everything would bring.
 *
 * @param counts what may vary by number
 * @returns the answer first; null when somebody stopped
 */
export async function explainPlan(
  search: PlanSearch,
  plans: readonly CandidatePlan[],
  counts: readonly CountVariation[],
  showing: Showing,
): Promise<ShownPlan[] | null> {
  const { candidates, found } = search;
  const chosen = found.chosen === null ? null : (candidates[found.chosen] ?? null);
  const today = plans.find(({ isToday }) => isToday);
  const asked = unique([
    ...(chosen === null ? [] : [answer(search, chosen)]),
    ...(today === undefined ? [] : [asToday(search, today)]),
    ...nearMisses(search),
    ...(chosen === null ? aroundTheBest(search, counts) : neighbours(search, chosen, counts)),
    ...alongTheCost(search),
  ]);
  const shown: ShownPlan[] = [];
  let ofChosen: readonly Observation[] | null = null;
  for (const { plan, role, states } of asked) {
    const used = reportOf(search, plan)?.replications ?? 0;
    const observations = await showing.observed.observe(plan, Math.max(used, SHOWN_REPLICATIONS));
    if (observations === null) return null;
    shown.push(shownPlan(plan, role, observations, ofChosen, states, showing));
    if (plan === chosen) ofChosen = observations;
  }
  return shown;
}

function answer(search: PlanSearch, plan: CandidatePlan): Asked {
  return { plan, role: { role: 'chosen', verdict: 'met', why: '' }, states: statesOf(search, plan) };
}

function asToday(search: PlanSearch, plan: CandidatePlan): Asked {
  const report = reportOf(search, plan);
  const discarded = search.ruledOut.find((one) => one.plan === plan);
  const verdict = discarded === undefined ? (report?.state ?? 'not tested') : 'missed';
  const why =
    discarded?.reason ?? (report === undefined ? 'is dearer than the answer' : whyOf(search, report));
  return { plan, role: { role: 'today', verdict, why }, states: statesOf(search, plan) };
}

/** Plans that came closest to their targets, plans just cheaper than the answer, and those that stayed undecided. */
function nearMisses(search: PlanSearch): Asked[] {
  const { found, candidates } = search;
  const missed = found.looked.filter(({ state }) => state === 'missed');
  const narrow = [...missed].sort((one, other) => shortfall(other) - shortfall(one)).slice(0, NARROWEST);
  const undecided = found.looked.filter(({ state }) => state === 'undecided');
  // Where there is no answer, nothing is just below it.
  const below = found.chosen === null ? [] : missed.slice(-DEAREST);
  const asked =
    (role: 'undecided' | 'near miss' | 'next below') =>
    (report: CandidateReport): Asked => {
      const plan = candidates[report.candidate] as CandidatePlan;
      return {
        plan,
        role: { role, verdict: report.state, why: whyOf(search, report) },
        states: statesOf(search, plan),
      };
    };
  return [
    ...undecided.map(asked('undecided')),
    ...narrow.map(asked('near miss')),
    ...below.map(asked('next below')),
  ];
}

/** How far the worst constraint lies from its target; below 0 is missed. */
function shortfall({ constraints }: CandidateReport): number {
  return Math.min(...constraints.map(({ mean }) => mean));
}

function neighbours(search: PlanSearch, chosen: CandidatePlan, counts: readonly CountVariation[]): Asked[] {
  return counts.flatMap((variation): Asked[] => {
    const count = countIn(chosen.lab, variation);
    const step = (by: 1 | -1): Asked => {
      const plan = withOther(chosen, variation, count + by);
      const role = by > 0 ? 'one more' : 'one fewer';
      const verdict = reportOf(search, plan)?.state ?? 'not tested';
      const why = `${role} of “${variation.group}”`;
      return { plan, role: { role, verdict, why }, states: statesOf(search, plan) };
    };
    return count > Math.max(variation.from, 0) ? [step(1), step(-1)] : [step(1)];
  });
}

/** Where no plan is good enough: what one more of each thing would bring to the one that comes closest. */
function aroundTheBest(search: PlanSearch, counts: readonly CountVariation[]): Asked[] {
  const best = bestMissed(search);
  return best === null ? [] : neighbours(search, best, counts).filter(({ role }) => role.role === 'one more');
}

/** The plan that comes closest to all its targets; null when none was played. */
export function bestMissed({ found, candidates }: PlanSearch): CandidatePlan | null {
  const [best] = [...found.looked].sort((one, other) => shortfall(other) - shortfall(one));
  return best === undefined ? null : (candidates[best.candidate] ?? null);
}

/** The plans that came closest at each level of cost, so that one sees what cost buys. */
function alongTheCost(search: PlanSearch): Asked[] {
  const { found, candidates } = search;
  const missed = found.looked.filter(({ state }) => state === 'missed');
  const size = Math.ceil(missed.length / FRONTIER_PLANS);
  return Array.from({ length: size === 0 ? 0 : Math.ceil(missed.length / size) }, (_, index): Asked => {
    const [best] = missed
      .slice(index * size, (index + 1) * size)
      .sort((one, other) => shortfall(other) - shortfall(one)) as [CandidateReport];
    const plan = candidates[best.candidate] as CandidatePlan;
    return {
      plan,
      role: { role: 'along the way', verdict: 'missed', why: whyOf(search, best) },
      states: statesOf(search, plan),
    };
  });
}

function unique(asked: readonly Asked[]): Asked[] {
  return asked.filter(
    ({ plan }, index) => asked.findIndex((other) => other.plan.name === plan.name) === index,
  );
}

function reportOf({ found, candidates }: PlanSearch, plan: CandidatePlan): CandidateReport | undefined {
  return found.looked.find(({ candidate }) => candidates[candidate]?.name === plan.name);
}

function statesOf(search: PlanSearch, plan: CandidatePlan): TargetOfPlan['verdict'][] {
  return reportOf(search, plan)?.constraints.map(({ state }) => state) ?? [];
}

function whyOf({ targets }: PlanSearch, { state, failed }: CandidateReport): string {
  if (state === 'met') return '';
  if (failed === null) return 'could neither be ruled out nor confirmed with so many replications';
  return `misses “${targets[failed]?.wording ?? ''}”`;
}
