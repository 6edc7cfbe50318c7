import type { FactorRange } from '@buildweek/model';
import { Phrase } from './phrase.ts';
import type { Wording } from './wording-error.ts';

/** Beyond ten times what is said it is no doubt but another lab. */
const MOST_PERCENT = 1000;

/**
 * `80 to 130 %`, `90 to 140 %, usually 110`: factors on what the scenario says. Without a usual value it is 100 %, or
 * the middle of a range that lies beside it.
 *
 * @throws WordingError
 */
export const factorRange: Wording<FactorRange> = (text) => {
  const phrase = new Phrase(text, 'a range in % of what the scenario says, low to high', '80 to 130 %');
  const first = phrase.amount('share');
  if (!phrase.take('to')) {
    const percent = first.number === 100 ? 120 : first.number;
    const write = percent < 100 ? `${percent} to 100 %` : `100 to ${percent} %`;
    throw phrase.error(`"${text}" is one value, and a doubt is a range.`, write);
  }
  const second = phrase.amount('share');
  let usual: number | null = null;
  if (phrase.take('usually')) usual = phrase.amount('share').number;
  phrase.end();
  const [low, high] = [first.number, second.number];
  if (second.unit === null) {
    // Small numbers without % are factors.
    const percent = (value: number): number => (high <= 10 ? Number((value * 100).toPrecision(6)) : value);
    const from = first.unit === null ? percent(low) : low;
    throw phrase.error(`"${text}" has no % behind it.`, `${from} to ${percent(high)} %`);
  }
  if (low > high) {
    throw phrase.error(`The low end (${low} %) is above the high end (${high} %).`, `${high} to ${low} %`);
  }
  if (low === high) throw phrase.error('Both ends are the same: then there is no doubt.');
  if (high > MOST_PERCENT) {
    throw phrase.error(`${high} % is more than can be in doubt.`, `${low} to ${MOST_PERCENT} %`);
  }
  if (usual !== null && (usual < low || usual > high)) {
    throw phrase.error(
      `The usual value (${usual} %) lies outside the range.`,
      `${Math.min(low, usual)} to ${Math.max(high, usual)} %, usually ${usual}`,
    );
  }
  const typical = usual ?? (low <= 100 && 100 <= high ? 100 : (low + high) / 2);
  return { low: low / 100, typical: typical / 100, high: high / 100 };
};
