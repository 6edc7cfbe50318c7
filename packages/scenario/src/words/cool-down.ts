import type { Duration } from '@buildweek/model';
import { plainDuration } from './duration.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** A cool-down as it is worded: a time, and further hours for the height of the build. */
export interface CoolDownWording {
  readonly duration: Duration;
  readonly hoursPerMillimetre: number;
}

const EXPECTED = 'a time, perhaps plus a time per mm of the height of the build, or none';
const EXAMPLE = '2 h plus 0.06 h per mm';
const PER_HEIGHT = /\s*\bper\s+(mm|cm)(?:\s+of\s+height)?\b/i;

/** `30 min`, `2 h plus 0.06 h per mm`, `none`. @throws WordingError */
export const coolDownTime: Wording<CoolDownWording | null> = (text) => {
  if (/^none$/i.test(text)) return null;
  let base: Duration | null = null;
  let hoursPerMillimetre: number | null = null;
  for (const term of text.split(/,?\s+plus\s+/i)) {
    const height = PER_HEIGHT.exec(term);
    if ((height === null ? base : hoursPerMillimetre) !== null) {
      throw new WordingError(
        height === null ? 'A time for any height is there twice.' : 'A time for the height is there twice.',
        EXPECTED,
        EXAMPLE,
      );
    }
    if (height === null) {
      base = readPart(text, term, plainDuration);
      continue;
    }
    const time = term.replace(height[0], '');
    const { distribution } = readPart(text, time, plainDuration);
    if (distribution.kind !== 'constant') {
      throw new WordingError(
        'What the height adds is one time; the range belongs to the time for any height.',
        EXPECTED,
        EXAMPLE,
      );
    }
    hoursPerMillimetre = distribution.value / (height[1]?.toLowerCase() === 'cm' ? 10 : 1);
  }
  return { duration: base ?? NO_TIME, hoursPerMillimetre: hoursPerMillimetre ?? 0 };
};

const NO_TIME: Duration = { distribution: { kind: 'constant', value: 0 }, typicalHours: 0 };
