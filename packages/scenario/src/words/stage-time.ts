import type { Distribution, Duration, DurationBasis } from '@buildweek/model';
import { basedDuration, plainDuration } from './duration.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** What of a part its time at a stage may grow with. */
export type PartMeasure = 'surface' | 'support contact' | 'volume';

/** A time for each mm2 or mm3 of a part. */
export interface SizeTerm {
  readonly measure: PartMeasure;
  /** For one mm2 or one mm3. */
  readonly duration: Duration;
}

/** How long a stage takes, what that counts for, and what each part adds by its size. */
export interface StageTime {
  readonly duration: Duration;
  /** Null when the text leaves it open; `part` when there are terms by size. */
  readonly basis: DurationBasis | null;
  readonly bySize: readonly SizeTerm[];
}

const EXPECTED =
  'a time, or times by the size of the part with "plus" between them: per cm2 of surface, per cm2 of support ' +
  'contact, per cm3 of part';
const EXAMPLE = '1 min per part plus 0.2 to 0.8 min per cm2 of support contact, usually 0.4';
const PER_SIZE =
  /[\s,]*\bper\s+(mm2|cm2|mm3|cm3)(?:\s+of\s+(?:the\s+)?([a-z]+(?:\s+(?!(?:to|usually|mean)\b)[a-z]+)?))?/i;
const PER_UNIT: Readonly<Record<string, number>> = { mm2: 1, cm2: 100, mm3: 1, cm3: 1000 };

/** Distributions that stay of their kind when a time is added to them. */
const SHIFTS: ReadonlySet<Distribution['kind']> = new Set([
  'constant',
  'uniform',
  'triangular',
  'pert',
  'measured',
]);

/**
 * A time at a stage: `5 min per part`, or with terms by the size of the part as in {@link EXAMPLE}. One of the
 * terms at most may be more than one time, since the sum of two distributions is none that has a name here.
 *
 * @param bases what it may count for
 * @returns a reader @throws WordingError
 */
export function stageTime(bases: readonly DurationBasis[]): Wording<StageTime> {
  return (text) => {
    if (!PER_SIZE.test(text) && !/\splus\s/i.test(text)) return { ...basedDuration(bases)(text), bySize: [] };
    return timeBySize(text);
  };
}

function timeBySize(text: string): StageTime {
  let perPart: Duration | null = null;
  const bySize: SizeTerm[] = [];
  for (const term of text.split(/,?\s+plus\s+/i)) {
    const size = PER_SIZE.exec(term);
    if (size !== null) {
      const measure = measureOf(text, term, size);
      if (bySize.some((other) => other.measure === measure)) throw twice(`per ${size[1]} of ${measure}`);
      const time = readPart(text, term.replace(size[0], ''), plainDuration);
      bySize.push({ measure, duration: scaled(time, 1 / (PER_UNIT[size[1]?.toLowerCase() ?? ''] ?? 1)) });
      continue;
    }
    const { duration, basis } = readPart(text, term, basedDuration(['job', 'part', 'build', 'batch']));
    if (basis !== 'part') {
      throw new WordingError(
        'A time by the size of the part is added to a time per part, and to no other.',
        EXPECTED,
        text.replace(term, `${term.replace(/[\s,]*\bper\s+\S+/i, '')} per part`),
      );
    }
    if (perPart !== null) throw twice('per part');
    perPart = duration;
  }
  const durations = [...(perPart === null ? [] : [perPart]), ...bySize.map((term) => term.duration)];
  const random = durations.filter(({ distribution }) => distribution.kind !== 'constant');
  if (random.length > 1) {
    throw new WordingError(
      'Only one of the times added may be a range; the others are one time each.',
      EXPECTED,
      EXAMPLE,
    );
  }
  const kind = random[0]?.distribution.kind ?? 'constant';
  if (durations.length > 1 && !SHIFTS.has(kind)) {
    throw new WordingError(`Times that are ${kind} cannot be added to others.`, EXPECTED, EXAMPLE);
  }
  return { duration: perPart ?? NONE, basis: 'part', bySize };
}

const NONE: Duration = { distribution: { kind: 'constant', value: 0 }, typicalHours: 0 };

function measureOf(text: string, term: string, size: RegExpExecArray): PartMeasure {
  const unit = size[1]?.toLowerCase() ?? '';
  const isArea = unit.endsWith('2');
  const words = size[2]?.toLowerCase() ?? '';
  if (isArea && /^surface\b/.test(words)) return 'surface';
  if (isArea && /^supports?\s+contact$/.test(words)) return 'support contact';
  if (!isArea && /^(part|volume)\b/.test(words)) return 'volume';
  const meant = isArea
    ? words.startsWith('s') && words.includes('p')
      ? 'support contact'
      : 'surface'
    : 'part';
  throw new WordingError(
    words === ''
      ? `"per ${unit}" does not say of what.`
      : `A time "per ${unit} of ${words}" is not possible here.`,
    EXPECTED,
    text.replace(term, () => term.replace(size[0], ` per ${unit} of ${meant}`).trim()),
  );
}

function twice(what: string): WordingError {
  return new WordingError(`A time ${what} is there twice.`, EXPECTED, EXAMPLE);
}

/**
 * The time at a stage of one part with these measures: all terms added up.
 *
 * @param sizeOf mm2 or mm3 of a measure
 */
export function timeOfPart(
  { duration, bySize }: Pick<StageTime, 'duration' | 'bySize'>,
  sizeOf: (measure: PartMeasure) => number,
): Duration {
  return bySize.reduce((sum, term) => added(sum, scaled(term.duration, sizeOf(term.measure))), duration);
}

/** So many times a duration, every value of it. */
function scaled(duration: Duration, times: number): Duration {
  const typical = duration.typicalHours * times;
  return { distribution: scaledDistribution(duration.distribution, times), typicalHours: typical };
}

function scaledDistribution(distribution: Distribution, times: number): Distribution {
  if (times === 0) return { kind: 'constant', value: 0 };
  switch (distribution.kind) {
    case 'constant':
      return { ...distribution, value: distribution.value * times };
    case 'uniform':
      return { ...distribution, low: distribution.low * times, high: distribution.high * times };
    case 'triangular':
    case 'pert':
      return {
        ...distribution,
        low: distribution.low * times,
        mode: distribution.mode * times,
        high: distribution.high * times,
      };
    case 'normal':
      return {
        ...distribution,
        mean: distribution.mean * times,
        standardDeviation: distribution.standardDeviation * times,
      };
    case 'lognormal':
      return { ...distribution, logMean: distribution.logMean + Math.log(times) };
    case 'exponential':
      return { ...distribution, mean: distribution.mean * times };
    case 'gamma':
    case 'weibull':
      return { ...distribution, scale: distribution.scale * times };
    case 'hyperexponential':
      return {
        ...distribution,
        branches: distribution.branches.map((branch) => ({ ...branch, mean: branch.mean * times })),
      };
    case 'measured':
      return { ...distribution, values: distribution.values.map((value) => value * times) };
  }
}

/** The sum of two times of which one at least is constant; the other stays of its kind. */
function added(one: Duration, other: Duration): Duration {
  const [constant, random] = one.distribution.kind === 'constant' ? [one, other] : [other, one];
  const shift = constant.distribution.kind === 'constant' ? constant.distribution.value : 0;
  return {
    distribution: shifted(random.distribution, shift),
    typicalHours: one.typicalHours + other.typicalHours,
  };
}

function shifted(distribution: Distribution, by: number): Distribution {
  switch (distribution.kind) {
    case 'constant':
      return { ...distribution, value: distribution.value + by };
    case 'uniform':
      return { ...distribution, low: distribution.low + by, high: distribution.high + by };
    case 'triangular':
    case 'pert':
      return {
        ...distribution,
        low: distribution.low + by,
        mode: distribution.mode + by,
        high: distribution.high + by,
      };
    case 'measured':
      return { ...distribution, values: distribution.values.map((value) => value + by) };
    default:
      // Its wording lets none of the others be added to a time above zero.
      return distribution;
  }
}
