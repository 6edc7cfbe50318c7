import type { Noticing } from '@buildweek/model';
import { plainDuration } from './duration.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

const EXPECTED = '"when somebody is in", "on arrival", "on rounds every 2 h" or "monitored" (day and night)';

/** How people learn that a machine has stopped or ended: `on rounds every 2 h`. @throws WordingError */
export const noticing: Wording<Noticing> = (text) => {
  const words = text.toLowerCase();
  if (words === 'when somebody is in') return { kind: 'when somebody is in' };
  if (words === 'on arrival') return { kind: 'on arrival' };
  if (words === 'monitored') return { kind: 'monitored' };
  const rounds = /^on rounds every (.+)$/.exec(words);
  if (rounds === null) {
    const write = /round/.test(words) ? 'on rounds every 2 h' : 'when somebody is in';
    throw new WordingError(`"${text}" is not understood here.`, EXPECTED, write);
  }
  const { distribution } = readPart(words, rounds[1] ?? '', plainDuration);
  if (distribution.kind === 'constant' && distribution.value > 0) {
    return { kind: 'rounds', everyHours: distribution.value };
  }
  throw new WordingError(
    'Rounds are one time above zero apart.',
    'a time such as 2 h',
    'on rounds every 2 h',
  );
};
