import type { HandLoad, JobClass, Run, WaitCause } from '@buildweek/results';
import type { GroupUse } from '../reduce/group-use-sums.ts';
import type { HoursEntry } from '../reduce/overall-hours-sums.ts';
import {
  durationWords,
  partOfDurationWords,
  percent,
  rangeWords,
  shareRangeWords,
  shareWords,
} from './figures.ts';

/** What the headline is made from. */
export interface HeadlineFacts {
  readonly jobs: readonly JobClass[];
  readonly uses: readonly GroupUse[];
  readonly hours: readonly HoursEntry[];
  readonly loads: readonly HandLoad[];
  readonly run: Pick<Run, 'weeks' | 'level'>;
}

/** Above this use a resource is called the bottleneck: queues grow steeply from about here on. */
const BOTTLENECK_SHARE = 0.7;

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
    ...leadTimeSentences(facts),
    ...onePeriodSentences(facts),
    ...onTimeSentences(facts),
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

function leadTimeSentences({ jobs, uses }: HeadlineFacts): string[] {
  const known = mainClasses(jobs).flatMap((job) => {
    const found = job.percentiles.find((percentile) => percentile.share === 0.9)?.longRun;
    return found?.kind === 'estimate' ? [`${nameOf(job)} are finished within ${durationWords(found)}`] : [];
  });
  const busiest = [...uses].sort((one, other) => other.share.value - one.share.value)[0];
  const bottleneck = busiest === undefined ? null : bottleneckWords(busiest);
  const [first, ...others] = known;
  if (first === undefined) {
    const refused = mainClasses(jobs)[0]?.percentiles.find((percentile) => percentile.share === 0.9)?.longRun;
    const reason = refused !== undefined && refused.kind !== 'estimate' ? ` ${refused.reason}` : '';
    return [
      `No lead time is given that nine of ten jobs keep.${reason}`,
      ...(bottleneck === null ? [] : [`${capital(bottleneck)}.`]),
    ];
  }
  const rest = others.map((words) => `, and nine of ten ${words}`).join('');
  return [`Nine of ten ${first}${rest}${bottleneck === null ? '' : `; ${bottleneck}`}.`];
}

function bottleneckWords({ name, kind, share }: GroupUse): string {
  const use =
    kind === 'people'
      ? `at work ${shareWords(share)} of the hours on duty`
      : `in use ${shareWords(share)} of the time`;
  return share.value >= BOTTLENECK_SHARE
    ? `the bottleneck is "${name}", ${use}`
    : `nothing is a bottleneck, and the busiest, "${name}", is ${use}`;
}

function onePeriodSentences({ jobs, run }: HeadlineFacts): string[] {
  const words = mainClasses(jobs).flatMap((job) => {
    const found = job.percentiles.find((percentile) => percentile.share === 0.9)?.onePeriod;
    return found?.kind === 'prediction' ? [`${rangeWords(found)} for nine of ten ${nameOf(job)}`] : [];
  });
  if (words.length === 0) return [];
  return [
    `Any one ${periodWords(run.weeks)} may bring ${words.join(', ')} (${percent(run.level)} % of them do).`,
  ];
}

function periodWords(weeks: number): string {
  if (weeks === 13) return 'quarter';
  if (weeks === 52) return 'year';
  return weeks === 1 ? 'week' : `stretch of ${weeks} weeks`;
}

function onTimeSentences({ jobs, run }: HeadlineFacts): string[] {
  return mainClasses(jobs).flatMap((job) => {
    if (job.onTime.kind !== 'estimate') return [];
    const one =
      job.onTimeOnePeriod.kind === 'prediction'
        ? `; in any one ${periodWords(run.weeks)} ${shareRangeWords(job.onTimeOnePeriod)}`
        : '';
    return [`${shareWords(job.onTime)} of ${nameOf(job)} with a promise keep it${one}.`];
  });
}

/** The largest causes of waiting; the rest is in the charts. */
const MOST_CAUSES = 3;

function hoursSentences({ jobs, hours }: HeadlineFacts): string[] {
  const mean = jobs.find((job) => job.part === null && job.priority === 'all')?.meanLeadTime;
  if (mean?.kind !== 'estimate' || !(mean.value > 0)) return [];
  const words = (entry: HoursEntry): string => {
    const name = entry.what === 'waiting' ? CAUSE_WORDS[entry.cause] : entry.what;
    return `${name} ${partOfDurationWords(entry.hours, mean.value)}`;
  };
  const work = hours.filter((entry) => entry.what !== 'waiting');
  const waits = hours
    .filter((entry) => entry.what === 'waiting')
    .sort((one, other) => other.hours.value - one.hours.value)
    .slice(0, MOST_CAUSES);
  if (work.length + waits.length === 0) return [];
  return [`Of the ${durationWords(mean)} of an average job: ${[...work, ...waits].map(words).join('; ')}.`];
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
