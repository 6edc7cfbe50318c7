import type { StationGroup } from '@buildweek/model';
import { nearest } from '../nearest.ts';
import { measure } from './measure.ts';
import { Phrase } from './phrase.ts';
import { nearestUnit, toBase, unitNamed } from './units.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** `24 parts`: how much a machine holds. @throws WordingError */
export const machineCapacity: Wording<number> = (text) => {
  const { number, unit, phrase } = numberOf(text, 'a number of parts', '24 parts');
  if (unit !== 'parts') throw phrase.error(`A machine holds parts, not "${unit}".`, `${number} parts`);
  return number;
};

/**
 * `20 parts`, `2 jobs`, `2 builds` (or `2 platforms`), `4 litres` of the boxes around the parts: how much a station
 * holds.
 *
 * @throws WordingError
 */
export const stationCapacity: Wording<{
  readonly capacity: number;
  readonly unit: StationGroup['unit'];
}> = (text) => {
  const expected = 'a number of parts, jobs or builds, or a volume';
  const volume = /^[^a-z]*\s*([a-z]+3?)$/i.exec(text)?.[1] ?? '';
  const isCount = nearest(volume, ['parts', 'jobs', 'builds', 'platforms']) !== null;
  const meant = isCount ? null : (nearestUnit(volume) ?? volume);
  if (unitNamed(meant ?? '')?.kind === 'volume') {
    return { capacity: measure('volume', '4 litres')(text), unit: 'box volume' };
  }
  const { number, unit, phrase } = numberOf(text, expected, '20 parts');
  if (unit === 'parts' || unit === 'jobs' || unit === 'builds') return { capacity: number, unit };
  if (unit === 'platforms') return { capacity: number, unit: 'builds' };
  throw phrase.error(`A station holds parts, jobs, builds or litres, not "${unit}".`);
};

/** `24 per build`: how many parts fill a machine. @throws WordingError */
export const fitsPerBuild: Wording<number> = (text) => {
  const phrase = new Phrase(text, 'how many of these parts fill one build', '24 per build');
  const number = phrase.number();
  if (phrase.atEnd) throw phrase.error(`"${text}" does not say in what.`, `${text} per build`);
  phrase.need('per');
  phrase.need('build');
  phrase.end();
  if (number >= 1) return number;
  throw phrase.error('A part that does not fit into a build cannot be made.', '1 per build');
};

/** `2.5 % of a build`: the space that a part takes. @throws WordingError */
export const spaceOfBuild: Wording<number> = (text) => {
  const phrase = new Phrase(text, 'the share of a build that one part takes', '2.5 % of a build');
  const amount = phrase.amount('share');
  if (amount.unit === null) throw phrase.error(`"${text}" has no % behind it.`);
  if (!phrase.atEnd) {
    phrase.need('of');
    phrase.need('a');
    phrase.need('build');
  }
  phrase.end();
  const space = toBase(amount.number, amount.unit);
  if (space > 1)
    throw phrase.error('The part takes more than a whole build: it fits no machine.', '100 % of a build');
  if (space > 0) return space;
  throw phrase.error('A part takes some space.');
};

function numberOf(text: string, expected: string, example: string) {
  const phrase = new Phrase(text, expected, example);
  const number = phrase.number();
  if (!Number.isInteger(number) || number < 1) {
    throw new WordingError(`${number} is not a whole number from 1 up.`, expected, example);
  }
  const word = phrase.next.toLowerCase();
  if (word === '') throw phrase.error(`"${text}" does not say of what.`, `${text} parts`);
  phrase.take(word);
  phrase.end();
  const unit = word.endsWith('s') ? word : `${word}s`;
  return { number, unit, phrase };
}
