import { acceptanceBand } from '../acceptance.ts';
import type { Verdict } from '../suite.ts';
import type { IntervalName, Outcome } from './outcome.ts';

/** Level of every interval that is counted. */
const LEVEL = 0.95;

/** How often the intervals of one kind hold. */
export interface Coverage extends Verdict {
  readonly name: IntervalName;
  readonly held: number;
}

const WORDS: Readonly<Record<IntervalName, string>> = {
  mean: 'the 95 % interval of the mean holds it',
  p95: 'the 95 % interval of the 95 % point holds it',
  prediction: 'the prediction with 95 % holds the 95 % point of the next replication',
};

/** Counts the intervals that hold, and compares with what chance allows. */
export function coverageOf(outcomes: readonly Outcome[]): Coverage[] {
  const { fewest, most } = acceptanceBand(outcomes.length, LEVEL);
  return (['mean', 'p95', 'prediction'] as const).map((name) => {
    const held = outcomes.filter((outcome) => outcome[name].holds).length;
    return {
      name,
      held,
      isWithin: fewest <= held && held <= most,
      words: `${WORDS[name]} in ${held} of ${outcomes.length} studies; ${fewest} to ${most} are accepted`,
    };
  });
}
