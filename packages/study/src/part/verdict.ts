import type { Overtaking, QuantityTimes, Spread, WayOfMaking } from '@buildweek/results';
import { clockRangeWords, clockWords, minutesWords } from './clock-words.ts';
import type { PartComparison } from './ways-of-making.ts';

/**
 * The answer in a few sentences: which way for the fewest and for the most pieces that were asked for, from how many
 * pieces on the answer changes, why, and what it takes of people.
 *
 * @param asked label of the moment of asking that the comparison is for
 */
export function verdictOf({ ways, overtakings }: PartComparison, asked: string): string[] {
  const quantities = ways[0]?.quantities.map(({ quantity }) => quantity) ?? [];
  const fewest = Math.min(...quantities);
  const most = Math.max(...quantities);
  if (quantities.length === 0) return ['No process of this lab can make the part.'];
  const sentences = [...new Set([fewest, most])].flatMap((quantity) =>
    fastestSentence(ways, quantity, asked),
  );
  const [first, last] = [fastest(ways, fewest), fastest(ways, most)];
  if (first !== null && last !== null && first.way !== last.way) {
    const overtaking = overtakings.find(
      ({ slower, faster }) => slower === first.way.route && faster === last.way.route,
    );
    if (overtaking !== undefined) sentences.push(overtakingSentence(overtaking));
  }
  if (first !== null) sentences.push(...whySentences(first.way, last?.way ?? first.way));
  sentences.push(...peopleSentence(ways, most));
  return sentences;
}

interface Ranked {
  readonly way: WayOfMaking;
  readonly times: QuantityTimes;
  readonly hours: Spread;
}

/** Ways in the order in which they finish so many pieces, the fastest first. */
function ranked(ways: readonly WayOfMaking[], quantity: number): Ranked[] {
  return ways
    .flatMap((way) => {
      const times = way.quantities.find((one) => one.quantity === quantity);
      const hours = times?.finished[0]?.hours;
      return times === undefined || hours === undefined ? [] : [{ way, times, hours }];
    })
    .sort((one, other) => one.hours.typical - other.hours.typical);
}

function fastest(ways: readonly WayOfMaking[], quantity: number): Ranked | null {
  return ranked(ways, quantity)[0] ?? null;
}

function fastestSentence(ways: readonly WayOfMaking[], quantity: number, asked: string): string[] {
  const [first, ...others] = ranked(ways, quantity);
  if (first === undefined) return [];
  const pieces = quantity === 1 ? 'For one piece' : `For ${quantity} pieces`;
  const rest = others.map(({ way, hours }) => `${way.route} ${clockWords(hours.typical)}`).join(', ');
  return [
    `${pieces}: ${nameOf(first.way)}, finished ${clockWords(first.hours.typical)} after it is asked for on ${asked} (mostly ${clockRangeWords(first.hours)})${
      rest === '' ? '.' : `; ${rest}.`
    }`,
  ];
}

function overtakingSentence({ slower, faster, quantity, low, high }: Overtaking): string {
  const spread =
    high === null
      ? `, though in more than one play of ten it is not`
      : low === high
        ? ''
        : ` (mostly between ${low} and ${high})`;
  return `From ${quantity} pieces on, ${faster} is ahead of ${slower}${spread}.`;
}

/** What makes the way of the few fast, and the way of the many. */
function whySentences(few: WayOfMaking, many: WayOfMaking): string[] {
  const [timeline] = few.timelines;
  const sentences =
    timeline === undefined
      ? []
      : [
          `Of the ${clockWords(timeline.hours)} of one piece by ${few.route}, printing takes ${clockWords(few.printHoursOfOne)}, people ${clockWords(timeline.attendedHours)}, and ${clockWords(timeline.closedHours)} pass while nobody is there or free.`,
        ];
  const build =
    many.mostPerBuild === 1
      ? `one piece fills a build of ${clockWords(many.printHoursOfOne)}`
      : `a full build holds ${many.mostPerBuild} pieces and prints ${clockWords(many.printHoursOfFull)}, against ${clockWords(many.printHoursOfOne)} for one`;
  return few === many
    ? [...sentences, `By ${many.route}, ${build}.`]
    : [...sentences, `What turns it for many pieces: by ${many.route}, ${build}.`];
}

function peopleSentence(ways: readonly WayOfMaking[], quantity: number): string[] {
  const all = ranked(ways, quantity).sort(
    (one, other) => one.times.minutesOfPeoplePerPart.typical - other.times.minutesOfPeoplePerPart.typical,
  );
  const [least] = all;
  const highest = all.at(-1);
  if (least === undefined || highest === undefined || least === highest) return [];
  const minutes = ({ times }: Ranked): string => minutesWords(times.minutesOfPeoplePerPart.typical);
  const pieces = quantity === 1 ? 'one piece' : `${quantity} pieces`;
  return [
    `Least work for people at ${pieces}: ${least.way.route} with ${minutes(least)} of hands per piece; most: ${highest.way.route} with ${minutes(highest)}.`,
  ];
}

function nameOf(way: WayOfMaking): string {
  return way.process === 'other' ? way.route : `${way.route} (${way.process})`;
}
