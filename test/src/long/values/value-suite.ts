import type { Interval } from '@buildweek/statistics';
import { acceptanceBand } from '../acceptance.ts';
import { rounded } from '../rounded.ts';
import { checkSeed, HOW_TO_RECORD, type Suite, seedOf } from '../suite.ts';

/** One number that a study estimates, again and again, and its true value. */
export interface EstimatedValue {
  readonly name: string;
  readonly title: string;
  /** As in "the 95 % interval of the difference". */
  readonly what: string;
  readonly repetitions: number;
  /** Everything that decides what is played. */
  readonly played: readonly unknown[];
  readonly truth: number;
  /** Made ready once, then used with one seed after the other. */
  createEstimator(): (seed: string) => Promise<Pick<Interval, 'value' | 'low' | 'high'>>;
}

/** Level of every interval. */
export const LEVEL = 0.95;

/** The long test that counts how often an interval holds the true value. */
export function valueSuite(estimated: EstimatedValue): Suite {
  const { name, title, what, repetitions, played, truth } = estimated;
  return {
    name,
    title,
    repetitions,
    played: [name, repetitions, ...played, truth, LEVEL],
    columns: 'seed,value,low,high,holds',
    createPlayer: () => {
      const estimator = estimated.createEstimator();
      return {
        play: async (repetition) => {
          const seed = seedOf(estimated, repetition);
          const { value, low, high } = await estimator(seed);
          const holds = low <= truth && truth <= high ? 'yes' : 'no';
          return [seed, rounded(value), rounded(low), rounded(high), holds].join(',');
        },
      };
    },
    check: (line, repetition) => {
      const [seed = '', ...cells] = line.split(',');
      checkSeed(estimated, repetition, seed);
      const [value = Number.NaN, low = Number.NaN, high = Number.NaN] = cells.slice(0, 3).map(Number);
      // Rounded ends cannot tell on which side of them a truth lies that is as good as equal.
      const slack = 1e-5 * Math.abs(truth);
      const isInside = low + slack < truth && truth < high - slack;
      const isOutside = truth < low - slack || high + slack < truth;
      const holds = cells[3] === 'yes';
      const isLine = cells.length === 4 && (holds || cells[3] === 'no') && low <= value && value <= high;
      if (!isLine || (isInside && !holds) || (isOutside && holds)) {
        throw new Error(`The record of "${seed}" contradicts itself: ${line}. ${HOW_TO_RECORD}`);
      }
    },
    verdicts: (lines) => {
      const held = lines.filter((line) => line.endsWith(',yes')).length;
      const { fewest, most } = acceptanceBand(lines.length, LEVEL);
      return [
        {
          isWithin: fewest <= held && held <= most,
          words: `the 95 % interval of ${what} holds it in ${held} of ${lines.length} studies; ${fewest} to ${most} are accepted`,
        },
      ];
    },
  };
}
