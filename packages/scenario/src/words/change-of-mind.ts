import type { ChangeOfMind } from '@buildweek/model';
import { plainDuration } from './duration.ts';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

const EXPECTED = 'a share of jobs and the time after the arrival, perhaps "only before start"; or never';
const EXAMPLE = '3 % after 2 to 72 h, usually 24';

/** `15 %`, `15 % of jobs`: a chance per job, up to all of them. @throws WordingError */
export const shareOfJobs: Wording<number> = (text) => {
  const phrase = new Phrase(text, 'a share of jobs', '15 % of jobs');
  const amount = phrase.amount('share');
  if (amount.unit === null) throw phrase.error(`"${text}" is a share and needs a %.`, `${text} %`);
  if (phrase.take('of')) phrase.need('jobs');
  phrase.end();
  const share = toBase(amount.number, amount.unit);
  if (share <= 1) return share;
  throw phrase.error(`${amount.text} is more than there can be.`, '100 % of jobs');
};

/**
 * `3 % after 2 to 72 h, usually 24`, `3 % of jobs after 24 h, only before start`, `never`.
 *
 * @returns null for never @throws WordingError
 */
export const changeOfMind: Wording<ChangeOfMind | null> = (text) => {
  if (/^never$/i.test(text)) return null;
  const early = /[\s,]+only\s+before\s+(?:the\s+)?start$/i.exec(text);
  const body = early === null ? text : text.slice(0, early.index);
  const parts = /^(.*?)[\s,]+after\s+(.+)$/i.exec(body);
  if (parts === null) {
    throw new WordingError(
      `"${text}" does not say how long after the arrival.`,
      EXPECTED,
      /^[\d.]+ ?%( of jobs)?$/.test(body) ? `${body} after 2 to 72 h, usually 24` : EXAMPLE,
    );
  }
  const chance = readPart(text, parts[1] ?? '', shareOfJobs);
  const { distribution } = readPart(text, parts[2] ?? '', plainDuration);
  return chance === 0 ? null : { chance, after: distribution, onlyBeforeStart: early !== null };
};
