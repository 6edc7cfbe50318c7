import type { Duration, PrintTime, VolumeAndHeightTime } from '@buildweek/model';
import { basedDuration, plainDuration } from './duration.ts';
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

const BY_SHAPE = /\s*\bper\s+(build|cm3|cm)\b(?:\s+of\s+(?:parts?|height))?/i;
const BY_SHAPE_EXPECTED = 'times per build, per cm3 of part and per cm of height, with "plus" between them';
const BY_SHAPE_EXAMPLE = '1 h per build plus 0.03 h per cm3 plus 0.7 h per cm';

/**
 * `1 h per build plus 0.03 h per cm3 plus 0.7 h per cm`: what the print of a build follows from when nothing is
 * said of its layers; the form is that of Kucukkoc, Computers & Operations Research (2019),
 * doi 10.1016/j.cor.2019.01.006.
 *
 * @throws WordingError
 */
export const layerFreePrintTime: Wording<Omit<VolumeAndHeightTime, 'kind'>> = (text) => {
  const hours = new Map<string, number>();
  for (const term of text.split(/,?\s+plus\s+/i)) {
    const per = BY_SHAPE.exec(term);
    const what = per?.[1]?.toLowerCase() ?? '';
    if (per === null || hours.has(what)) {
      throw new WordingError(
        per === null ? `"${term.trim()}" does not say for what.` : `A time per ${what} is there twice.`,
        BY_SHAPE_EXPECTED,
        BY_SHAPE_EXAMPLE,
      );
    }
    const { distribution } = readPart(text, term.replace(per[0], ''), plainDuration);
    if (distribution.kind !== 'constant') {
      throw new WordingError(
        'These are one time each; how far prints are from it is the spread of the print time.',
        BY_SHAPE_EXPECTED,
        BY_SHAPE_EXAMPLE,
      );
    }
    hours.set(what, distribution.value);
  }
  if (Math.max(...hours.values()) === 0) {
    throw new WordingError('A print takes some time.', BY_SHAPE_EXPECTED, BY_SHAPE_EXAMPLE);
  }
  return {
    hoursPerBuild: hours.get('build') ?? 0,
    hoursPerCubicCentimetre: hours.get('cm3') ?? 0,
    hoursPerCentimetre: hours.get('cm') ?? 0,
  };
};
