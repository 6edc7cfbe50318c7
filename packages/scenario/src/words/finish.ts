import { choice } from './choice.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** How parts are finished, from the least to the most work. */
export const FINISHES = ['as printed', 'cleaned', 'smooth'] as const;
export type Finish = (typeof FINISHES)[number];

/** Of parts that say nothing. */
export const USUAL_FINISH: Finish = 'cleaned';

/**
 * Finishes that a stage is done for: `cleaned` is done for cleaned parts and for all that ask for more, since
 * a smooth part has been cleaned before; `only cleaned` for these alone.
 *
 * @throws WordingError
 */
export const finishesOfStage: Wording<readonly Finish[]> = (text) => {
  const only = /^only\s+(.+)$/i.exec(text);
  const words = [...FINISHES, ...FINISHES.map((finish) => `only ${finish}`)];
  const word = choice(...words)(text);
  const finish = FINISHES.find((candidate) => word.endsWith(candidate)) ?? 'cleaned';
  if (only !== null) return [finish];
  if (finish !== 'as printed') return FINISHES.slice(FINISHES.indexOf(finish));
  throw new WordingError(
    'Every part is at least as printed: this stage is done for all.',
    'a finish that not every part asks for, or the stage without the key',
    'only as printed',
  );
};
