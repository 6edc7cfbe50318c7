import { createHash } from 'node:crypto';

/** One in so many repetitions is played again by the ordinary tests. */
const ONE_IN = 20;

/**
 * Which repetitions are played again: a twentieth, other ones whenever the sources are others, so that nobody knows
 * beforehand which lines of a record will be looked at.
 *
 * @param key a hash of the sources, with the name of the suite
 * @returns ascending
 */
export function chosenRepetitions(key: string, repetitions: number): number[] {
  const rank = (repetition: number): string =>
    createHash('sha256').update(`${key} ${repetition}`).digest('hex');
  return Array.from({ length: repetitions }, (_, repetition) => ({ repetition, rank: rank(repetition) }))
    .sort((first, second) => (first.rank < second.rank ? -1 : 1))
    .slice(0, Math.ceil(repetitions / ONE_IN))
    .map(({ repetition }) => repetition)
    .sort((first, second) => first - second);
}
