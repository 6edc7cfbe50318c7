import type { Distribution } from '@buildweek/model';
import { plainDuration } from './duration.ts';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** Layers at the bottom that are exposed longer. */
export interface BottomLayers {
  readonly number: number;
  readonly seconds: number;
  /** Whether the seconds come on top of the time of any layer. */
  readonly isMore: boolean;
}

const SECONDS_PER_HOUR = 3600;

/** `8 s`: one time, in seconds. @throws WordingError */
export const secondsPerLayer: Wording<number> = (text) => {
  if (/^[\d.]+$/.test(text)) {
    throw new WordingError(`"${text}" has no unit.`, 'one time with its unit', `${text} s`);
  }
  const { distribution } = plainDuration(text);
  if (distribution.kind === 'constant') return distribution.value * SECONDS_PER_HOUR;
  throw new WordingError(
    'The time of a layer is one time; how far prints are from it is the spread of the print time.',
    'one time with its unit',
    '8 s',
  );
};

/** `5 at 40 s each`, `5 at 32 s more each`, `none`. @throws WordingError */
export const bottomLayers: Wording<BottomLayers> = (text) => {
  if (/^none$/i.test(text)) return { number: 0, seconds: 0, isMore: true };
  const expected = 'how many layers, and how long each of them takes';
  const parts = /^(\S+)(?:\s+layers?)?\s+at\s+(.+?)(\s+more)?(?:\s+each)?$/i.exec(text);
  if (parts === null) throw new WordingError(`"${text}" is not understood here.`, expected, '5 at 40 s each');
  const [, number = '', time = '', more] = parts;
  if (!/^\d+$/.test(number)) {
    throw new WordingError(`"${number}" is not a whole number.`, expected, `5 at ${time} each`);
  }
  return {
    number: Number(number),
    seconds: readPart(text, time, secondsPerLayer),
    isMore: more !== undefined,
  };
};

/**
 * `15 %`: how far print times are from their estimate, as a coefficient of variation; `none`. The factor is
 * lognormal with mean 1 (Law, Simulation Modeling and Analysis, section 6.2.2, from memory).
 *
 * @throws WordingError
 */
export const printTimeSpread: Wording<Distribution> = (text) => {
  if (/^none$/i.test(text)) return { kind: 'constant', value: 1 };
  const phrase = new Phrase(text, 'a share of the print time, or none', '15 %');
  const amount = phrase.amount('share');
  phrase.end();
  if (amount.unit === null) throw phrase.error(`"${text}" has no % behind it.`, `${text} %`);
  const variation = toBase(amount.number, amount.unit);
  if (variation === 0) return { kind: 'constant', value: 1 };
  if (variation > 1) throw phrase.error(`${amount.text} is more than an estimate can be wrong.`, '100 %');
  const logVariance = Math.log1p(variation * variation);
  return { kind: 'lognormal', logMean: -logVariance / 2, logStandardDeviation: Math.sqrt(logVariance) };
};
