import type { Distribution } from '@buildweek/model';
import { plainDuration } from './duration.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** How far apart things are that come again, and what makes that time pass. */
export interface Recurrence {
  readonly by: 'running hours' | 'clock';
  /** Hours from the end of one to the next. */
  readonly distribution: Distribution;
}

const EXPECTED =
  'a time that counts "of running" or "by the clock"; "about 250 h" is random (exponential) with this mean';
const EXAMPLE = 'about 250 h of running';

/**
 * `about 250 h of running`, `4 weeks by the clock`, `weibull shape 1.5, mean 400 h of running`. A word "every"
 * in front is read over. @throws WordingError
 */
export const recurrence: Wording<Recurrence> = (text) => {
  const every = /^(about\s+)?every\s+/i.exec(text);
  const plain = every === null ? text : `${every[1] ?? ''}${text.slice(every[0].length)}`;
  const counts = /[\s,]*\b(of running|by the clock)\b/i.exec(plain);
  const time = counts === null ? plain : plain.replace(counts[0], '');
  const distribution = timeBetween(time, counts?.[0] ?? '');
  if (counts === null) {
    const isRunning = /\b(h|hours?|min)\b/.test(time);
    throw new WordingError(
      `"${text}" does not say whether only running counts or every hour of the day.`,
      EXPECTED,
      `${plain} ${isRunning ? 'of running' : 'by the clock'}`,
    );
  }
  return { by: counts[1]?.toLowerCase() === 'of running' ? 'running hours' : 'clock', distribution };
};

/** @param suffix what stood behind the time, for what is to be written instead */
function timeBetween(text: string, suffix: string): Distribution {
  const about = /^about\s+/i.exec(text);
  const time = about === null ? text : text.slice(about[0].length);
  const { distribution, typicalHours } = mended(time, about?.[0] ?? '', suffix);
  if (!(typicalHours > 0)) {
    throw new WordingError('Without any time between them they never end.', EXPECTED, EXAMPLE);
  }
  if (about === null) return distribution;
  if (distribution.kind === 'constant') return { kind: 'exponential', mean: distribution.value };
  throw new WordingError(
    `"about" stands before one time, and "${time}" is more than that.`,
    EXPECTED,
    `${time}${suffix}`,
  );
}

/** What is to be written instead says again what was cut off for reading. */
function mended(time: string, before: string, behind: string): ReturnType<typeof plainDuration> {
  try {
    return plainDuration(time);
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    // What has no unit is hours here.
    const mendedTime = error.write === `${time} min` ? `${time} h` : error.write;
    const write = mendedTime.includes('usually') ? EXAMPLE : `${before}${mendedTime}${behind}`;
    throw new WordingError(error.message, EXPECTED, write);
  }
}
