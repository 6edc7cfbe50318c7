import type { Duration, PrintTime } from '@buildweek/model';
import { basedDuration } from './duration.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

const NONE: Duration = { distribution: { kind: 'constant', value: 0 }, typicalHours: 0 };
const EXPECTED = 'a time per build, a time per part, or both with "plus" between them';

/** `3 h per build`, `20 min per part`, `2 h per build plus 5 min per part`. @throws WordingError */
export const printTime: Wording<PrintTime> = (text) => {
  let perBuild: Duration | null = null;
  let perPart: Duration | null = null;
  for (const term of text.split(/\s+plus\s+/i)) {
    const { duration, basis } = readPart(text, term, basedDuration(['build', 'part']));
    if (basis === null) {
      throw new WordingError(
        `"${term.trim()}" does not say whether it is for a whole build or for each part.`,
        EXPECTED,
        `${text} per build`,
      );
    }
    if ((basis === 'build' ? perBuild : perPart) !== null) {
      throw new WordingError(
        `A time per ${basis} is there twice.`,
        EXPECTED,
        '2 h per build plus 5 min per part',
      );
    }
    if (basis === 'build') perBuild = duration;
    else perPart = duration;
  }
  return { kind: 'typed', perBuild: perBuild ?? NONE, perPart: perPart ?? NONE };
};
