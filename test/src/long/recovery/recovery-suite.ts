import { acceptanceBand, type Band } from '../acceptance.ts';
import { checkSeed, HOW_TO_RECORD, type Suite, seedOf, type Verdict } from '../suite.ts';
import { type KnownLaws, knownLog } from './known-log.ts';
import { FIGURES, type LearnedFigure, type Limits, learnedFigures, truthOf } from './learned-figures.ts';

const REPETITIONS = 500;
const LEVEL = 0.95;

/** Means of fitted laws have intervals of the likelihood ratio; the others are exact, and hold more often than they say. */
const FITTED: readonly LearnedFigure[] = ['minutes of hand work on a job', 'hours of a print'];

/** The long test that learns from logs whose truth is known, and counts how often the limits hold it. */
export function recoverySuite(name: string, title: string, laws: KnownLaws): Suite {
  return {
    name,
    title,
    repetitions: REPETITIONS,
    played: [name, REPETITIONS, laws, FIGURES.map((figure) => truthOf(laws, figure)), LEVEL],
    columns: ['seed', ...FIGURES.flatMap((figure) => [`${figure}: low`, 'high', 'holds'])].join(','),
    createPlayer: () => ({
      play: async (repetition) => {
        const seed = seedOf({ name }, repetition);
        const learned = learnedFigures(laws, knownLog(laws, seed));
        return [seed, ...FIGURES.map((figure) => cells(learned[figure], truthOf(laws, figure)))].join(',');
      },
    }),
    check: (line, repetition) => {
      const [seed = '', ...rest] = line.split(',');
      checkSeed({ name }, repetition, seed);
      const isLine = FIGURES.every((figure, index) => {
        const written = rest.slice(3 * index, 3 * index + 3).join(',');
        return written === cells(limitsIn(line, index), truthOf(laws, figure));
      });
      if (!isLine || rest.length !== 3 * FIGURES.length) {
        throw new Error(`The record of "${seed}" contradicts itself: ${line}. ${HOW_TO_RECORD}`);
      }
    },
    verdicts: (lines) => FIGURES.map((figure) => verdictOf(figure, lines, truthOf(laws, figure))),
  };
}

function cells({ low, high }: Limits, truth: number): string {
  return `${low},${high},${low <= truth && truth <= high ? 'yes' : 'no'}`;
}

function limitsIn(line: string, index: number): Limits {
  const [low, high] = line.split(',').slice(1 + 3 * index, 3 + 3 * index);
  return { low: Number(low ?? Number.NaN), high: Number(high ?? Number.NaN) };
}

/**
 * How many of the recorded limits hold the truth.
 * @param factor by which they are drawn apart, about their middle
 */
export function heldBy(lines: readonly string[], figure: LearnedFigure, truth: number, factor = 1): number {
  return lines.filter((line) => {
    const { low, high } = limitsIn(line, FIGURES.indexOf(figure));
    if (high === Number.POSITIVE_INFINITY) return low <= truth;
    const slack = ((factor - 1) * (high - low)) / 2;
    return low - slack <= truth && truth <= high + slack;
  }).length;
}

/** How many chance allows: exact limits may hold it every time. */
export function acceptedOf(figure: LearnedFigure, logs: number): Band {
  const band = acceptanceBand(logs, LEVEL);
  return FITTED.includes(figure) ? band : { ...band, most: logs };
}

function verdictOf(figure: LearnedFigure, lines: readonly string[], truth: number): Verdict {
  const held = heldBy(lines, figure, truth);
  const { fewest, most } = acceptedOf(figure, lines.length);
  return {
    isWithin: fewest <= held && held <= most,
    words: `the 95 % limits of ${figure} hold it in ${held} of ${lines.length} logs; ${fewest} to ${most} are accepted`,
  };
}
