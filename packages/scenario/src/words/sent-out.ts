import type { Distribution, Duration, SendOutRule } from '@buildweek/model';
import { plainDuration } from './duration.ts';
import { wholeNumber } from './numbers.ts';
import { unitNamed } from './units.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** When jobs are sent out, without how long they are away. */
export type SendOutConditions = Omit<SendOutRule, 'leadTime'>;

/** How long jobs are away as it is worded; the cut-off stands elsewhere. */
export type OutsideTimeWording =
  | { readonly kind: 'clock'; readonly duration: Duration }
  | { readonly kind: 'working days'; readonly days: Distribution };

const WHEN_EXPECTED =
  'always, never, or one or both of "more than 12 jobs wait" and "a promise is at risk", with "or" between them';
const WHEN_EXAMPLE = 'more than 12 jobs wait or a promise is at risk';

const NEVER: SendOutConditions = { always: false, waitingJobsAbove: null, promiseAtRisk: false };

/** `always`, `never`, `more than 12 jobs wait or a promise is at risk`. @returns null for never @throws WordingError */
export const sendOutConditions: Wording<SendOutConditions | null> = (text) => {
  if (/^never$/i.test(text)) return null;
  if (/^always$/i.test(text)) return { ...NEVER, always: true };
  let conditions = NEVER;
  for (const part of text.split(/\s+or\s+/i)) {
    const condition = part.trim();
    const added = conditionOf(condition.replace(/^when\s+/i, ''), text);
    if (
      Object.keys(added).some((key) => conditions[key as keyof SendOutConditions] !== NEVER[key as 'always'])
    ) {
      throw new WordingError(
        `"${condition}" comes after a condition of the same kind.`,
        WHEN_EXPECTED,
        WHEN_EXAMPLE,
      );
    }
    conditions = { ...conditions, ...added };
  }
  return conditions;
};

function conditionOf(condition: string, text: string): Partial<SendOutConditions> {
  const waiting = /^more\s+than\s+(.+?)\s+jobs?\s+waits?$/i.exec(condition);
  if (waiting !== null) {
    return { waitingJobsAbove: readPart(text, waiting[1] ?? '', wholeNumber(0, '12')) };
  }
  if (/^((a|the|its|their)\s+)?promises?\s+((is|are)\s+)?at\s+risk$/i.test(condition))
    return { promiseAtRisk: true };
  const least = /^(?:at\s+least\s+)?(\d+)\s+(?:or\s+more\s+)?jobs?\s+waits?$/i.exec(condition);
  if (least !== null && Number(least[1]) > 0) {
    throw new WordingError(
      `"${condition}" is not understood here.`,
      WHEN_EXPECTED,
      text.replace(condition, `more than ${Number(least[1]) - 1} jobs wait`),
    );
  }
  if (/^(always|never)$/i.test(condition)) {
    throw new WordingError(
      `"${condition}" leaves nothing to other conditions.`,
      WHEN_EXPECTED,
      condition.toLowerCase(),
    );
  }
  throw new WordingError(`"${condition}" is not understood here.`, WHEN_EXPECTED, WHEN_EXAMPLE);
}

const TIME_EXPECTED =
  'working days ("4 to 9 working days, usually 6") or a time by the clock ("2 to 6 days, usually 4")';
const TIME_EXAMPLE = '4 to 9 working days, usually 6';
const WORKING_DAYS = /\bworking\s+days?\b/gi;

/** `4 to 9 working days, usually 6`, or `2 to 6 days, usually 4` by the clock. @throws WordingError */
export const outsideTime: Wording<OutsideTimeWording> = (text) => {
  if (text.search(WORKING_DAYS) >= 0) return { kind: 'working days', days: workingDays(text) };
  if (/^\d+(\.\d+)?(\s+to\s+\d+(\.\d+)?(,?\s+usually\s+\d+(\.\d+)?)?)?$/i.test(text)) {
    throw new WordingError(
      `"${text}" does not say of what.`,
      TIME_EXPECTED,
      text.replace(/^([\d.]+(?:\s+to\s+[\d.]+)?)/, '$1 working days'),
    );
  }
  const duration = byTheClock(text);
  if (duration.typicalHours > 0) return { kind: 'clock', duration };
  throw new WordingError('What is sent out is back after some time.', TIME_EXPECTED, TIME_EXAMPLE);
};

function byTheClock(text: string): Duration {
  try {
    return plainDuration(text);
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    throw new WordingError(error.message, TIME_EXPECTED, /\d/.test(text) ? error.write : TIME_EXAMPLE);
  }
}

/** Any time of this format, in working days: read as if they were hours. */
function workingDays(text: string): Distribution {
  const rest = text.replace(WORKING_DAYS, '');
  const other = (rest.match(/\p{L}+/gu) ?? []).find((word) => unitNamed(word)?.kind === 'time');
  if (other !== undefined) {
    throw new WordingError(`"${other}" and working days do not go together.`, TIME_EXPECTED, TIME_EXAMPLE);
  }
  const inDays = (words: string): string => words.replace(/\b(h|min)\b/g, 'working days');
  let days: Duration;
  try {
    days = plainDuration(text.replace(WORKING_DAYS, 'h'));
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    throw new WordingError(inDays(error.message), TIME_EXPECTED, inDays(error.write));
  }
  const { distribution } = days;
  const whole = distribution.kind === 'constant' ? distribution.value : null;
  if (whole !== null && !(Number.isInteger(whole) && whole >= 1)) {
    throw new WordingError(
      `"${text}" is not a whole number of working days from 1 up.`,
      TIME_EXPECTED,
      whole > 1 ? `${Math.ceil(whole)} working days` : '1 working day',
    );
  }
  return distribution;
}
