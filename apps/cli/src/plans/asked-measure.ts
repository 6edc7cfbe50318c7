import { SPEED_MEASURE } from '@buildweek/results';
import type { ReplicationMeasure } from '@buildweek/study';
import { badInput } from '../failure.ts';

const INNER = /: (?:value|met)$/;

/**
 * Position of the measure that effects are looked at for: the one that is asked for; null, for that of the target which fails
 * most often, where nothing is asked; and the lead time that nine of ten jobs keep where there is no target.
 *
 * @param targets how many measures at the front belong to targets
 * @throws Failure for bad input for a measure that there is not
 */
export function askedMeasure(
  asked: string | undefined,
  measures: readonly ReplicationMeasure[],
  targets: number,
): number | null {
  if (asked === undefined) {
    return targets > 0 ? null : measures.findIndex(({ name }) => name === SPEED_MEASURE);
  }
  const wanted = asked.trim().toLowerCase();
  const names = measures.map(({ name }) => name).filter((name) => !INNER.test(name));
  const exact = names.find((name) => name.toLowerCase() === wanted);
  const found = exact ?? names.filter((name) => name.toLowerCase().includes(wanted));
  if (typeof found === 'string') return measures.findIndex(({ name }) => name === found);
  if (found.length === 1) return measures.findIndex(({ name }) => name === found[0]);
  const choices = (found.length > 1 ? found : names).map((name) => `  ${name}`).join('\n');
  throw badInput(
    `${found.length > 1 ? `More than one measure has "${asked}" in its name` : `There is no measure "${asked}"`}. Give one of these with --of, or a part of its name:\n${choices}`,
  );
}
