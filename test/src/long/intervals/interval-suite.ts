import { checkSeed, HOW_TO_RECORD, type Suite } from '../suite.ts';
import { coverageOf } from './coverage.ts';
import { COLUMNS, type IntervalName, lineOf, outcomeOf, targetOf } from './outcome.ts';
import { StudyPlayer } from './player.ts';
import type { StudySuite } from './study-suite.ts';

const INTERVALS: readonly IntervalName[] = ['mean', 'p95', 'prediction'];

/** The long test that counts how often the intervals of a study hold what they should. */
export function intervalSuite(study: StudySuite): Suite {
  const { name, title, scenario, repetitions, truth } = study;
  return {
    name,
    title,
    repetitions,
    played: [name, scenario, repetitions, truth.meanLeadTime, truth.p95LeadTime],
    columns: COLUMNS,
    createPlayer: () => {
      const player = new StudyPlayer(study);
      return { play: async (repetition) => lineOf(await player.play(repetition)) };
    },
    check: (line, repetition) => {
      check(study, line, repetition);
    },
    verdicts: (lines) => coverageOf(lines.map(outcomeOf)),
  };
}

function check(study: StudySuite, line: string, repetition: number): void {
  const outcome = outcomeOf(line);
  checkSeed(study, repetition, outcome.seed);
  for (const name of INTERVALS) {
    const { low, high, holds } = outcome[name];
    const target = targetOf(study, outcome, name);
    // Rounded ends cannot tell on which side of them a target lies that is as good as equal.
    const slack = 1e-5 * target;
    const isInside = low + slack < target && target < high - slack;
    const isOutside = target < low - slack || high + slack < target;
    if ((isInside && !holds) || (isOutside && holds)) {
      throw new Error(
        `The record of "${outcome.seed}" contradicts itself: the ${name} from ${low} to ${high}. ${HOW_TO_RECORD}`,
      );
    }
  }
}
