import { type Wording, WordingError } from './wording-error.ts';

const WORKING_DAYS = /\b(?:(?:working|business|work)[\s-]?days?|wds?)\b/i;

/** Hours of work in a working day, and of the clock from one day to the next. */
const WORK_HOURS = 8;
const CLOCK_HOURS = 24;

/**
 * What is said of a time in working days, which only promises know.
 *
 * @returns null for texts without working days
 */
export function workingDaysRefusal(text: string, expected: string): WordingError | null {
  if (!WORKING_DAYS.test(text)) return null;
  return new WordingError(
    'Working days are for promises; a time here is told in hours.',
    `${expected}, in hours: a working day is about ${WORK_HOURS} h of work, and ${CLOCK_HOURS} h by the clock`,
    inHours(text, WORK_HOURS),
  );
}

/**
 * A time that goes on day and night, as that of an answer or a wait.
 *
 * @param message what is said of working days there
 * @returns a reader @throws WordingError
 */
export function byTheClock<T>(message: string, wording: Wording<T>): Wording<T> {
  return (text) => {
    if (!WORKING_DAYS.test(text)) return wording(text);
    throw new WordingError(
      message,
      `a time by the clock in hours: from one working day to the next it is ${CLOCK_HOURS} h, over a weekend ${3 * CLOCK_HOURS} h`,
      inHours(text, CLOCK_HOURS),
    );
  };
}

function inHours(text: string, hoursPerDay: number): string {
  return text
    .replace(/\d+(?:\.\d+)?/g, (number) => String(Number((Number(number) * hoursPerDay).toPrecision(12))))
    .replace(new RegExp(`\\s*${WORKING_DAYS.source}`, 'gi'), ' h');
}
