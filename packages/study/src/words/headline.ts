import {
  type Band,
  type Estimate,
  type HandLoad,
  type JobClass,
  lastingGrowth,
  periodName,
  type Run,
  type SentOut,
  type TargetResult,
  toldInDays,
  type WaitCause,
} from '@buildweek/results';
import type { GroupUse } from '../reduce/group-use-sums.ts';
import type { HoursEntry } from '../reduce/overall-hours-sums.ts';
import { busiestWords } from './busiest.ts';
import {
  bareDurationWords,
  capital,
  countWords,
  DAYS,
  durationWords,
  HOURS,
  percent,
  rangeWords,
  shareRangeWords,
  shareWords,
  type TimeUnit,
} from './figures.ts';
import { targetSentences } from './target-sentences.ts';

/** What the headline is made from. */
export interface HeadlineFacts {
  readonly targets: readonly TargetResult[];
  readonly jobs: readonly JobClass[];
  readonly uses: readonly GroupUse[];
  readonly hours: readonly HoursEntry[];
  readonly loads: readonly HandLoad[];
  readonly sentOut: readonly SentOut[];
  readonly run: Pick<Run, 'weeks' | 'level'>;
  /** Jobs in the lab, by measured week. */
  readonly jobsInLab: Band;
  /** Whether the pilot came to no rest. */
  readonly pilotSettles: boolean;
}

const CAUSE_WORDS: Readonly<Record<WaitCause, string>> = {
  requester: 'waiting for the requester',
  'machine down': 'waiting for a repair',
  machine: 'waiting for a free machine or station',
  carrier: 'waiting for a carrier',
  batch: 'waiting for a build or batch to fill',
  shift: 'waiting for a shift to begin',
  person: 'waiting for a person',
  'rest of the job': 'waiting for the rest of the job',
};

/** The answer in a few sentences, the most important first. Every number stands with its interval. */
export function headlineOf(facts: HeadlineFacts): string[] {
  return [
    ...overloadSentences(facts.loads),
    ...growthSentences(facts),
    ...targetSentences(facts.targets, facts.run.weeks),
    ...leadTimeSentences(facts),
    ...onePeriodSentences(facts),
    ...onTimeSentences(facts),
    ...sentOutSentences(facts),
    ...hoursSentences(facts),
  ];
}

function overloadSentences(loads: readonly HandLoad[]): string[] {
  return loads
    .filter((load) => load.load >= 1)
    .map(
      (load) =>
        `The lab cannot keep up: the demand asks for ${percent(load.load)} % of the hours of ${load.name}, so the queue grows as long as one plays.`,
    );
}

/** A backlog that grows makes every lead time a matter of the day on which it is looked at. */
function growthSentences({ jobsInLab, pilotSettles, run }: HeadlineFacts): string[] {
  const growth = lastingGrowth(jobsInLab);
  if (growth !== null) {
    return [
      `The lab does not keep up: jobs in it grow from ${countWords(growth.from)} to ${countWords(growth.to)} in ${run.weeks} weeks; the lead times below depend on when one looks and are no lasting figures.`,
    ];
  }
  if (pilotSettles) return [];
  return [
    'It is not certain that the lab keeps up: played for longer, the number of jobs in it does not settle; the lead times below may depend on when one looks.',
  ];
}

/** Rush and normal jobs where there are both, else all. */
function mainClasses(jobs: readonly JobClass[]): JobClass[] {
  const overall = jobs.filter((job) => job.part === null);
  const byPriority = ['rush', 'normal'].flatMap((priority) =>
    overall.filter((job) => job.priority === priority),
  );
  return byPriority.length > 0 ? byPriority : overall;
}

function nameOf(job: JobClass): string {
  return job.priority === 'all' ? 'jobs' : `${job.priority} jobs`;
}

function unitOf(jobs: readonly JobClass[]): TimeUnit {
  return toldInDays(jobs) ? DAYS : HOURS;
}

function leadTimeSentences(facts: HeadlineFacts): string[] {
  const { jobs, uses } = facts;
  const unit = unitOf(jobs);
  const known = mainClasses(jobs).flatMap((job) => {
    const found = percentileOf(job)?.longRun;
    return found?.kind === 'estimate'
      ? [`${nameOf(job)} are finished within ${durationWords(found, unit)}`]
      : [];
  });
  const busiest = busiestWords(uses, { keepsPromises: keepsPromises(jobs), keepsUp: keepsUp(facts) });
  const [first, ...others] = known;
  if (first === undefined) {
    const refused = mainClasses(jobs).flatMap((job) => percentileOf(job)?.longRun ?? [])[0];
    const reason = refused === undefined || refused.kind === 'estimate' ? '' : ` ${refused.reason}`;
    return [
      `No lead time can be given that nine of ten jobs keep.${reason}`,
      ...(busiest === null ? [] : [`${capital(busiest)}.`]),
    ];
  }
  const rest = others.map((words) => `, and nine of ten ${words}`).join('');
  return [`Nine of ten ${first}${rest}${busiest === null ? '' : `; ${busiest}`}.`];
}

/** Share of promises from which on they count as kept. Common practice, no source. */
const KEPT_SHARE = 0.95;

/** Whether each class of jobs that has promises keeps nearly all of them. */
function keepsPromises(jobs: readonly JobClass[]): boolean {
  const shares = mainClasses(jobs).flatMap(({ onTime }) =>
    onTime.kind === 'estimate' ? [onTime.value] : [],
  );
  return shares.length > 0 && shares.every((share) => share >= KEPT_SHARE);
}

function keepsUp(facts: HeadlineFacts): boolean {
  return overloadSentences(facts.loads).length + growthSentences(facts).length === 0;
}

function percentileOf(job: JobClass): JobClass['percentiles'][number] | undefined {
  return job.percentiles.find((percentile) => percentile.share === 0.9);
}

function onePeriodSentences({ jobs, run }: HeadlineFacts): string[] {
  const unit = unitOf(jobs);
  const words = mainClasses(jobs).flatMap((job) => {
    const found = percentileOf(job)?.onePeriod;
    return found?.kind === 'prediction' ? [`${rangeWords(found, unit)} for ${nameOf(job)}`] : [];
  });
  if (words.length === 0) return [];
  return [
    `In any one ${periodName(run.weeks)} that figure may come out anywhere from ${words.join(', and from ')}; ${percent(run.level)} of 100 do.`,
  ];
}

function onTimeSentences({ jobs, run }: HeadlineFacts): string[] {
  return mainClasses(jobs).flatMap((job) => {
    if (job.onTime.kind !== 'estimate') return [];
    const one =
      job.onTimeOnePeriod.kind === 'prediction'
        ? `; in any one ${periodName(run.weeks)} ${shareRangeWords(job.onTimeOnePeriod)}`
        : '';
    return [`${shareWords(job.onTime)} of ${nameOf(job)} with a promise keep it${one}.`];
  });
}

/** From this share of jobs on, what is made outside belongs to the answer. Common practice, no source. */
const MUCH_SENT_OUT = 0.1;

/** What the lab does not make itself, when it is much: its lead times are then not those of the lab alone. */
function sentOutSentences({ sentOut }: HeadlineFacts): string[] {
  const all = sentOut.find(({ part }) => part === null);
  if (all?.share.kind !== 'estimate' || all.share.value < MUCH_SENT_OUT) return [];
  return [
    `${shareWords(all.share)} of all jobs are sent out, ${countWords(all.partsPerWeek)} parts a week; the lead times above count them in.`,
  ];
}

/** The largest causes of waiting have a part of their own. */
const MOST_CAUSES = 3;
const SMALLEST_SHARE = 0.02;

/** All parts of the mean lead time: they add up to it. */
function hoursSentences({ jobs, hours }: HeadlineFacts): string[] {
  const mean = jobs.find((job) => job.part === null && job.priority === 'all')?.meanLeadTime;
  if (mean?.kind !== 'estimate' || !(mean.value > 0)) return [];
  const unit = unitOf(jobs);
  const work = hours.filter((entry) => entry.what !== 'waiting');
  const waits = hours
    .filter((entry) => entry.what === 'waiting')
    .sort((one, other) => other.hours.value - one.hours.value);
  const own = waits.slice(0, MOST_CAUSES).filter((entry) => entry.hours.value >= SMALLEST_SHARE * mean.value);
  const others = sumOf(waits.slice(own.length).map((entry) => entry.hours));
  if (work.length + waits.length === 0) return [];
  const words = [
    ...[...work, ...own].map((entry) => {
      const name = entry.what === 'waiting' ? CAUSE_WORDS[entry.cause] : entry.what;
      return `${name} ${bareDurationWords(entry.hours, unit)}`;
    }),
    ...(others === null ? [] : [`other waits ${bareDurationWords(others, unit)}`]),
  ];
  return [`Of the ${durationWords(mean, unit)} of an average job: ${words.join('; ')}.`];
}

/**
 * The sum of estimates of one run; null for none. Ends are added, which is at least as wide as the interval of the
 * sum: the standard deviation of a sum is at most the sum of the standard deviations.
 */
function sumOf(estimates: readonly Estimate[]): Estimate | null {
  const [first] = estimates;
  if (first === undefined) return null;
  const sum = (pick: (one: Estimate) => number): number =>
    estimates.reduce((total, one) => total + pick(one), 0);
  return {
    ...first,
    value: sum((one) => one.value),
    low: sum((one) => one.low),
    high: sum((one) => one.high),
  };
}
