import { binomialCumulative } from '@buildweek/numbers';
import { checkSeed, HOW_TO_RECORD, type Suite, seedOf } from '../suite.ts';
import { PLANS, RIGHT } from './problem.ts';

/** What one use of a procedure came to. */
export interface Pick {
  /** Position of the plan; null for none. */
  readonly chosen: number | null;
  /** Replications played of each plan. */
  readonly replications: readonly number[];
}

/** What a long test of a selection states. */
export interface Selection {
  readonly name: string;
  readonly title: string;
  readonly repetitions: number;
  /** Everything that decides what is played. */
  readonly played: readonly unknown[];
  /** Made ready once, then used with one seed after the other. */
  createProcedure(): (seed: string) => Promise<Pick>;
}

/** The promise: wrong in at most so many uses. */
const ALPHA = 0.05;
/** A procedure that keeps its promise is blamed once in a thousand times. */
const BLAME = 0.001;
const NONE = 'none';

/** The most wrong picks of so many that chance allows: 73 of 1,000. */
export function mostWrong(repetitions: number): number {
  let most = Math.floor(ALPHA * repetitions);
  while (1 - binomialCumulative(most, repetitions, ALPHA) > BLAME) most++;
  return most;
}

/** The long test that counts how often a procedure picks another plan than the right one. */
export function selectionSuite(selection: Selection): Suite {
  const { name, title, repetitions, played } = selection;
  return {
    name,
    title,
    repetitions,
    played: [name, repetitions, PLANS.map((plan) => plan.name), RIGHT, ...played],
    columns: ['seed', 'picked', 'right', ...PLANS.map((plan) => `replications of ${plan.name}`)].join(','),
    createPlayer: () => {
      const procedure = selection.createProcedure();
      return {
        play: async (repetition) => {
          const seed = seedOf(selection, repetition);
          const { chosen, replications } = await procedure(seed);
          const picked = chosen === null ? NONE : (PLANS[chosen]?.name ?? NONE);
          return [seed, picked, chosen === RIGHT ? 'yes' : 'no', ...replications].join(',');
        },
      };
    },
    check: (line, repetition) => {
      const [seed = '', picked, right, ...replications] = line.split(',');
      checkSeed(selection, repetition, seed);
      const isRight = picked === PLANS[RIGHT]?.name;
      const counts = replications.map(Number);
      const pickedCount = counts[PLANS.findIndex((plan) => plan.name === picked)] ?? 0;
      if (
        right !== (isRight ? 'yes' : 'no') ||
        counts.length !== PLANS.length ||
        !counts.every((count) => Number.isInteger(count) && count >= 0) ||
        (picked !== NONE && pickedCount === 0)
      ) {
        throw new Error(`The record of "${seed}" contradicts itself: ${line}. ${HOW_TO_RECORD}`);
      }
    },
    verdicts: (lines) => {
      const wrong = lines.filter((line) => line.split(',')[2] !== 'yes').length;
      const most = mostWrong(lines.length);
      const total = lines.reduce((sum, line) => sum + replicationsOf(line), 0);
      return [
        {
          isWithin: wrong <= most,
          words: `another plan than the right one in ${wrong} of ${lines.length} uses; at most ${most} are accepted; ${(total / lines.length).toFixed(1)} replications each`,
        },
      ];
    },
  };
}

/** Replications of all plans in one use. */
function replicationsOf(line: string): number {
  return line
    .split(',')
    .slice(3)
    .reduce((sum, cell) => sum + Number(cell), 0);
}
