import { checkShare } from './checks.ts';
import { type FeasibilitySettings, type FeasibilityState, FeasibilityTest } from './feasibility.ts';

/**
 * Plays replications `from` (counted from 0) up to, without, `to` of one candidate.
 * @returns a row for each replication with a value for each constraint; null when somebody stopped it
 */
export type ObserveConstraints = (
  candidate: number,
  from: number,
  to: number,
) => Promise<readonly (readonly number[])[] | null>;

/** What is searched, and how sure the answer has to be. */
export interface CheapestFeasibleSettings {
  /** How many candidates there are, in order of cost: 0 is the cheapest. Fixed before the first replication. */
  readonly candidates: number;
  /** As in `FeasibilitySettings`. */
  readonly tolerances: readonly number[];
  readonly leastVariances?: readonly number[];
  /** Share of uses in which the answer may be wrong. */
  readonly alpha: number;
  /** As in `FeasibilitySettings`. */
  readonly firstStage: { readonly met: number; readonly missed: number };
  /** Replications that are asked for at a time. */
  readonly batch: number;
  /** A candidate that is not decided after so many replications is left undecided. */
  readonly most: number;
}

/** What is known of one constraint of a candidate. */
export interface ConstraintReport {
  readonly state: FeasibilityState;
  /** Mean over all replications played; of Y, which is to be at least 0. */
  readonly mean: number;
  /** One-sided bounds, each at the level 1 − alpha by itself; valid although the test chose when to stop. Null when
   * it was stopped before a first stage was complete. */
  readonly atLeast: number | null;
  readonly atMost: number | null;
}

/** What is known of a candidate that was looked at. */
export interface CandidateReport {
  readonly candidate: number;
  readonly state: FeasibilityState;
  /** Replications played. */
  readonly replications: number;
  /** After which of them it was decided; null when it was not. */
  readonly decidedAfter: number | null;
  /** The constraint that was missed first; null when none was. */
  readonly failed: number | null;
  readonly constraints: readonly ConstraintReport[];
}

/** The answer of the search. */
export interface CheapestFeasible {
  /** The first candidate that was called met; null when there is none. */
  readonly chosen: number | null;
  /** Cheaper candidates than the chosen one that could not be ruled out. */
  readonly undecided: readonly number[];
  /** Those that were looked at, in order. */
  readonly looked: readonly CandidateReport[];
  /** Replications played, of all candidates. */
  readonly replications: number;
  readonly isStopped: boolean;
}

/**
 * Finds the cheapest candidate that meets all constraints: goes up in order of cost and tests one after the other, on
 * the same random numbers if `observe` plays the same replications for all. What it finds depends on the observations
 * alone.
 *
 * The promise, for normal observations and as long as no candidate is left undecided: with a chance of at least
 * 1 − alpha the chosen one is no dearer than the cheapest candidate that meets every constraint by its tolerance, and
 * misses none by as much. Alpha is shared by Bonferroni: half of it over the constraints for calling that one right plan
 * missed, half over the candidates for calling a cheaper bad one met (a bad plan has one constraint that is truly
 * missed, and to be called met it has to pass in that one). Dependence between candidates or constraints does no harm.
 * Sources: S. Andradóttir and S.-H. Kim, Naval Research Logistics 57 (2010), 403–421, for the test; D. Batur and
 * S.-H. Kim, "Finding feasible systems in the presence of constraints on multiple performance measures", ACM
 * Transactions on Modeling and Computer Simulation 20 (2010), 13:1–13:26, for several constraints. Going up in order of
 * a known cost needs no comparison of costs.
 * @throws RangeError for settings out of range, or observations of another shape
 */
export async function cheapestFeasible(
  settings: CheapestFeasibleSettings,
  observe: ObserveConstraints,
): Promise<CheapestFeasible> {
  check(settings);
  const looked: CandidateReport[] = [];
  let isStopped = false;
  let chosen: number | null = null;
  for (let candidate = 0; candidate < settings.candidates && chosen === null && !isStopped; candidate++) {
    const test = new FeasibilityTest(testSettings(settings));
    while (test.state === 'undecided' && test.replications < settings.most && !isStopped) {
      const from = test.replications;
      const to = Math.min(from + settings.batch, settings.most);
      const rows = await observe(candidate, from, to);
      if (rows === null) isStopped = true;
      else addAll(test, rows, to - from);
    }
    if (test.replications > 0) looked.push(reportOf(candidate, test, settings));
    if (test.state === 'met') chosen = candidate;
  }
  return {
    chosen,
    undecided: looked.filter(({ state }) => state === 'undecided').map(({ candidate }) => candidate),
    looked,
    replications: looked.reduce((sum, { replications }) => sum + replications, 0),
    isStopped,
  };
}

function testSettings(settings: CheapestFeasibleSettings): FeasibilitySettings {
  const { candidates, tolerances, leastVariances = [], alpha, firstStage } = settings;
  return {
    tolerances,
    leastVariances,
    falseMet: alpha / 2 / candidates,
    falseMissed: alpha / 2 / tolerances.length,
    firstStage,
  };
}

function check({ candidates, alpha, batch, most, firstStage }: CheapestFeasibleSettings): void {
  checkShare('share of wrong answers', alpha);
  for (const [name, value] of [
    ['number of candidates', candidates],
    ['batch', batch],
  ] as const) {
    if (!(Number.isInteger(value) && value >= 1)) {
      throw new RangeError(`The ${name} must be a whole number of at least 1, not ${value}`);
    }
  }
  const fewest = Math.max(firstStage.met, firstStage.missed);
  if (!(Number.isInteger(most) && most >= fewest)) {
    throw new RangeError(`At most ${most} replications do not complete a first stage of ${fewest}`);
  }
}

function addAll(test: FeasibilityTest, rows: readonly (readonly number[])[], wanted: number): void {
  if (rows.length !== wanted) {
    throw new RangeError(`${wanted} replications were asked for, not ${rows.length}`);
  }
  for (const row of rows) test.add(row);
}

function reportOf(
  candidate: number,
  test: FeasibilityTest,
  { tolerances, alpha }: CheapestFeasibleSettings,
): CandidateReport {
  return {
    candidate,
    state: test.state,
    replications: test.replications,
    decidedAfter: test.decidedAfter,
    failed: test.failed,
    constraints: tolerances.map((_, index) => ({
      state: test.stateOf(index),
      mean: test.mean(index),
      atLeast: test.atLeast(index, 1 - alpha),
      atMost: test.atMost(index, 1 - alpha),
    })),
  };
}
