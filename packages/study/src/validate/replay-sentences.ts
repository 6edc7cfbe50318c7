import {
  formatNumber,
  type HeldAgainst,
  type HeldPart,
  type HeldStage,
  joinWords,
  type WouldSee,
} from '@buildweek/results';
import { DAYS, HOURS, percent, percentOf, type TimeUnit } from '../words/figures.ts';
import { workSentences } from './likely-cause.ts';
import type { ReplayFindings } from './replay-findings.ts';

const HOURS_PER_DAY = 24;
/** Kinds of numbers, and parts, that are named; the page has them all. */
const MOST_NAMED = 3;

/** What sentences are made of. */
export type ReplaySaid = Omit<ReplayFindings, 'parts'> & {
  readonly parts: readonly HeldPart[];
  readonly stages: readonly HeldStage[];
  readonly wouldSee: readonly WouldSee[];
};

/** What the check says, in a few sentences; the verdict first. */
export function replaySentences(found: ReplaySaid, replications: number): string[] {
  const { weeksWithin, leadTimes, onTime, parts, stages, wouldSee } = found;
  const { weeks, of, low, high } = weeksWithin;
  const expected = low === high ? `${low} are` : `${low} to ${high} are`;
  const median = leadTimes.find(({ share }) => share === 0.5);
  const p90 = leadTimes.find(({ share }) => share === 0.9);
  const unit = unitOf(median?.expected ?? 0);
  return [
    `What happened lies within what the model expects in ${weeks} of ${of} weeks (${expected} to be expected if the model is right).`,
    testSentence(found, replications),
    ...(median === undefined || p90 === undefined
      ? []
      : [
          `Half of the jobs took at most ${beside(median, unit)}; nine of ten at most ${beside(p90, unit)}.${onTime === null ? '' : ` On time were ${percent(onTime.observed)} %, ${percent(onTime.expected)} % expected (${percent(onTime.low)} to ${percent(onTime.high)}).`}`,
        ]),
    ...partSentences(parts),
    ...workSentences(stages),
    ...wouldSeeSentences(wouldSee),
  ];
}

function testSentence({ test }: ReplaySaid, replications: number): string {
  const { pValue, falseAlarmRate, isContradicted, families } = test;
  const histories = replications + 1;
  const extreme = Math.round(pValue * histories);
  const rate = `a model that is right would be called contradicted in at most ${percentOf(falseAlarmRate)} of 100 such checks`;
  if (!isContradicted) {
    return `Nothing in these weeks contradicts the model: of ${replications} histories that it makes of the same jobs, ${isAre(extreme - 1)} at least as unusual as what happened (${rate}).`;
  }
  const left = families.filter(({ isLeft }) => isLeft).map(({ what }) => what);
  const named = left.slice(0, MOST_NAMED).join('; ');
  const others = left.length > MOST_NAMED ? '; and others' : '';
  const where =
    left.length === 0
      ? ''
      : ` What happened leaves the band in ${left.length} of ${families.length} kinds of numbers: ${named}${others}.`;
  return `What happened contradicts the model: of ${replications} histories that it makes of the same jobs, ${extreme === 1 ? 'none is' : `only ${isAre(extreme - 1)}`} as unusual (${rate}).${where}`;
}

function isAre(count: number): string {
  return `${count} ${count === 1 ? 'is' : 'are'}`;
}

/** The parts that differ most; how many others do. */
function partSentences(parts: readonly HeldPart[]): string[] {
  const size = ({ leadTime }: HeldPart): number => Math.abs(leadTime.observed - leadTime.expected);
  const apart = parts
    .filter(({ outcome }) => outcome !== 'as modelled')
    .sort((one, other) => size(other) - size(one));
  const others = apart.length - MOST_NAMED;
  return [
    ...apart.slice(0, MOST_NAMED).map(partSentence),
    ...(others <= 0
      ? []
      : [`${others} other ${others === 1 ? 'part differs' : 'parts differ'} from the model too.`]),
  ];
}

function partSentence({ part, leadTime, outcome, cause }: HeldPart): string {
  const unit = unitOf(leadTime.expected);
  if (outcome === 'otherwise') {
    return `Jobs of “${part}” take as long as modelled on average, but their slowest, or the share that is on time, differ from the model.`;
  }
  const difference = Math.abs(leadTime.observed - leadTime.expected);
  const size = `${formatNumber(difference / unit.size, 1)} ${unit.many}`;
  const because = cause === null ? '' : `; ${cause}`;
  return `Jobs of “${part}” are ${size} ${outcome} than modelled (${figure(leadTime.observed, unit)} on average, not ${figure(leadTime.expected, unit)})${because}.`;
}

/** What the check is worth for this very log. */
function wouldSeeSentences(seen: readonly WouldSee[]): string[] {
  const [first] = seen;
  if (first === undefined) return [];
  const more = percentOf(first.factor - 1);
  const each = seen.map(({ what, seen: logs, of }) => `${what} in ${Math.round((100 * logs) / of)}`);
  return [
    `Of a lab in which something takes ${more} % longer than modelled, this check would see it in so many of 100 such logs: ${joinWords(each)}.`,
  ];
}

/** `2.4 days (2.2 expected, 1.9 to 2.6)`. */
function beside({ observed, expected, low, high }: HeldAgainst, unit: TimeUnit): string {
  return `${figure(observed, unit)} ${unit.many} (expected ${figure(expected, unit)}, ${figure(low, unit)} to ${figure(high, unit)})`;
}

function figure(hours: number, { size }: TimeUnit): string {
  return formatNumber(hours / size, 1);
}

function unitOf(hours: number): TimeUnit {
  return hours >= HOURS_PER_DAY ? DAYS : HOURS;
}
