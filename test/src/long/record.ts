import { createHash } from 'node:crypto';
import { COLUMNS, type IntervalName, lineOf, type Outcome, outcomeOf, targetOf } from './outcome.ts';
import { type Suite, seedOf } from './suite.ts';

const INTERVALS: readonly IntervalName[] = ['mean', 'p95', 'prediction'];

/** Said wherever a record does not fit. */
export const HOW_TO_RECORD = 'If that is meant, record anew with "npm run test:long"; never edit a record.';

/**
 * All outcomes of a suite as text: a digest over the suite and the outcomes, the names of the columns, and a line for
 * each repetition.
 */
export function recordOf(suite: Suite, outcomes: readonly Outcome[]): string {
  const body = [COLUMNS, ...outcomes.map(lineOf), ''].join('\n');
  return `digest ${digestOf(suite, body)}\n${body}`;
}

/**
 * Reads what `recordOf` has written.
 *
 * @throws Error when the digest does not fit, repetitions are missing or in another order, or a line contradicts itself
 */
export function outcomesOf(suite: Suite, record: string): Outcome[] {
  const [first = '', ...rest] = record.split('\n');
  const body = rest.join('\n');
  if (first !== `digest ${digestOf(suite, body)}`) {
    throw new Error(
      `The record of ${suite.name} was edited, or is of another version of the suite. ${HOW_TO_RECORD}`,
    );
  }
  const outcomes = rest.slice(1, -1).map(outcomeOf);
  if (outcomes.length !== suite.repetitions) {
    throw new Error(`The record of ${suite.name} has ${outcomes.length} repetitions. ${HOW_TO_RECORD}`);
  }
  outcomes.forEach((outcome, repetition) => {
    check(suite, outcome, repetition);
  });
  return outcomes;
}

function digestOf({ name, scenario, repetitions, truth }: Suite, body: string): string {
  const played = JSON.stringify([name, scenario, repetitions, truth.meanLeadTime, truth.p95LeadTime]);
  return createHash('sha256').update(`${played}\n${body}`).digest('hex');
}

function check(suite: Suite, outcome: Outcome, repetition: number): void {
  const seed = seedOf(suite, repetition);
  if (outcome.seed !== seed) {
    throw new Error(
      `The record of ${suite.name} has "${outcome.seed}" in place of "${seed}". ${HOW_TO_RECORD}`,
    );
  }
  for (const name of INTERVALS) {
    const { low, high, holds } = outcome[name];
    const target = targetOf(suite, outcome, name);
    // Rounded ends cannot tell on which side of them a target lies that is as good as equal.
    const slack = 1e-5 * target;
    const isInside = low + slack < target && target < high - slack;
    const isOutside = target < low - slack || high + slack < target;
    if ((isInside && !holds) || (isOutside && holds)) {
      throw new Error(
        `The record of "${seed}" contradicts itself: the ${name} from ${low} to ${high}. ${HOW_TO_RECORD}`,
      );
    }
  }
}
