import type { QuantityTimes, Spread, WayOfMaking } from '@buildweek/results';
import { clockRangeWords, clockWords, minutesWords } from './clock-words.ts';
import type { PartComparison } from './ways-of-making.ts';

/** More changes of the lead are not told one by one. */
const MOST_STRETCHES = 4;

/** Waits that are shorter are not worth a word, hours. */
const SHORTEST_WAIT = 0.05;

/**
 * The answer in a few sentences: which way for the fewest and for the most pieces that were asked for, from how many
 * pieces on the answer changes, why, and what it takes of people.
 *
 * @param asked label of the moment of asking that the comparison is for
 */
export function verdictOf(comparison: PartComparison, asked: string): string[] {
  const { ways } = comparison;
  const quantities = ways.flatMap((way) => way.quantities.map(({ quantity }) => quantity));
  if (quantities.length === 0) return ['No process of this lab can make the part within a year.'];
  const fewest = Math.min(...quantities);
  const most = Math.max(...quantities);
  const first = fastest(ways, fewest);
  const last = fastest(ways, most);
  return [
    ...[...new Set([fewest, most])].flatMap((quantity) => fastestSentence(ways, quantity, asked)),
    ...leaderSentence(comparison),
    ...(first === null ? [] : whySentences(first, last ?? first)),
    ...peopleSentence(ways, most),
  ];
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
    `${pieces}: ${nameOf(first.way)}, finished ${clockWords(first.hours.typical)} after it is asked for on ${asked}${spreadWords(first.hours)}${rest === '' ? '.' : `; ${rest}.`}`,
  ];
}

/** Which way is the fastest up to how many pieces; nothing when it is the same one for all. */
function leaderSentence({ ways, overtakings }: PartComparison): string[] {
  const quantities = [...new Set(ways.flatMap((way) => way.curve.map(({ quantity }) => quantity)))];
  const leaders: { route: string; from: number }[] = [];
  for (const quantity of quantities.sort((a, b) => a - b)) {
    const route = leaderAt(ways, quantity);
    const before = leaders.at(-1);
    if (route === null || before?.route === route) continue;
    const known = overtakings.find(({ slower, faster }) => slower === before?.route && faster === route);
    const isHere = known !== undefined && known.quantity > (before?.from ?? 0) && known.quantity <= quantity;
    leaders.push({ route, from: isHere ? known.quantity : quantity });
  }
  const [first, second] = leaders;
  const last = leaders.at(-1);
  if (first === undefined || second === undefined || last === undefined) return [];
  if (leaders.length > MOST_STRETCHES) {
    const between = [...new Set(leaders.slice(1, -1).map(({ route }) => route))].join(', ');
    return [
      `Fastest by number of pieces: ${first.route} ${second.from === 2 ? 'for one' : `up to ${second.from - 1}`}, ${last.route} from ${last.from} on; in between ${between} take turns, since nights and full builds make steps.`,
    ];
  }
  const stretches = leaders.map(({ route, from }, index) => {
    const next = leaders[index + 1];
    if (next === undefined) return `${route} from ${from} on`;
    return index === 0
      ? next.from === 2
        ? `${route} for one`
        : `${route} up to ${next.from - 1}`
      : `${route} from ${from}${next.from - 1 > from ? ` to ${next.from - 1}` : ''}`;
  });
  return [`Fastest by number of pieces: ${stretches.join(', ')}.`];
}

function leaderAt(ways: readonly WayOfMaking[], quantity: number): string | null {
  let leader: { route: string; hours: number } | null = null;
  for (const { route, curve } of ways) {
    const hours = curve.find((point) => point.quantity === quantity)?.hours;
    if (hours !== undefined && (leader === null || hours < leader.hours)) leader = { route, hours };
  }
  return leader?.route ?? null;
}

/** What makes the way of the few fast, and the way of the many. */
function whySentences(few: Ranked, many: Ranked): string[] {
  const [timeline] = few.way.timelines;
  const sentences: string[] = [];
  if (few.times.quantity === 1 && timeline !== undefined) {
    const wait =
      timeline.closedHours > SHORTEST_WAIT
        ? `; ${clockWords(timeline.closedHours)} pass while nobody is there or free`
        : '';
    const hands = minutesWords(few.times.minutesOfPeoplePerPart.typical);
    sentences.push(
      `Of the ${clockWords(few.hours.typical)} of one piece by ${few.way.route}, printing takes about ${clockWords(few.way.printHoursOfOne)}, and people work ${hands}${wait}.`,
    );
  }
  if (few.way === many.way) {
    sentences.push(`By ${many.way.route}, ${buildWords(many.way)}.`);
  } else {
    sentences.push(
      `What turns it for many pieces: by ${many.way.route}, ${buildWords(many.way)}; by ${few.way.route}, ${buildWords(few.way)}.`,
    );
  }
  return sentences;
}

/** What a piece costs in print hours when builds are full, against one alone. */
function buildWords({ mostPerBuild, printHoursOfOne, printHoursOfFull }: WayOfMaking): string {
  const one = clockWords(printHoursOfOne);
  if (mostPerBuild === 1) return `a build holds one piece and prints ${one}`;
  const each = clockWords(printHoursOfFull / mostPerBuild);
  return `a full build of ${mostPerBuild} prints ${clockWords(printHoursOfFull)}, ${each} for each piece (one alone: ${one})`;
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

/** Nothing where most plays come out alike. */
function spreadWords(hours: Spread): string {
  const range = clockRangeWords(hours);
  const [low, , high] = range.split(' ');
  return low === high ? '' : ` (mostly ${range})`;
}

function nameOf(way: WayOfMaking): string {
  return way.process === 'other' ? way.route : `${way.route} (${way.process})`;
}
