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

/** From about this use on queues grow steeply, and a resource is called the bottleneck: common practice, no source. */
const BOTTLENECK_SHARE = 0.8;

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
    const found = percentileOf(job)?.longRun;
    return found?.kind === 'estimate' ? [`${nameOf(job)} are finished within ${durationWords(found)}`] : [];
  });
  const bottleneck = bottleneckWords(uses);
  const [first, ...others] = known;
  if (first === undefined) {
    const refused = mainClasses(jobs).flatMap((job) => percentileOf(job)?.longRun ?? [])[0];
    const reason = refused === undefined || refused.kind === 'estimate' ? '' : ` ${refused.reason}`;
    return [
      `No lead time can be given that nine of ten jobs keep.${reason}`,
      ...(bottleneck === null ? [] : [`${capital(bottleneck)}.`]),
    ];
  }
  const rest = others.map((words) => `, and nine of ten ${words}`).join('');
  return [`Nine of ten ${first}${rest}${bottleneck === null ? '' : `; ${bottleneck}`}.`];
}

/** What is at work nearly always; else what is held nearly always, though it only waits for people; else nothing. */
function bottleneckWords(uses: readonly GroupUse[]): string | null {
  const most = (share: (use: GroupUse) => number): GroupUse | undefined =>
    [...uses].sort((one, other) => share(other) - share(one))[0];
  const busiest = most((use) => use.atWork.value);
  const held = most((use) => use.held.value);
  if (busiest === undefined || held === undefined) return null;
  const of = busiest.kind === 'people' ? 'of the hours on duty' : 'of the time';
  const atWork = `at work ${shareWords(busiest.atWork)} ${of}`;
  if (busiest.atWork.value >= BOTTLENECK_SHARE) return `the bottleneck is "${busiest.name}", ${atWork}`;
  if (held.held.value >= BOTTLENECK_SHARE && held.waitingForPeople !== null) {
    return `the bottleneck is "${held.name}", taken up ${shareWords(held.held)} of the time, of all hours ${shareWords(held.waitingForPeople)} waiting for people to start or empty it`;
  }
  return `nothing is worked to its limit, and the busiest, "${busiest.name}", is ${atWork}`;
}

function percentileOf(job: JobClass): JobClass['percentiles'][number] | undefined {
  return job.percentiles.find((percentile) => percentile.share === 0.9);
}

function onePeriodSentences({ jobs, run }: HeadlineFacts): string[] {
  const words = mainClasses(jobs).flatMap((job) => {
    const found = percentileOf(job)?.onePeriod;
    return found?.kind === 'prediction' ? [`${rangeWords(found)} for ${nameOf(job)}`] : [];
  });
  if (words.length === 0) return [];
  const period = periodWords(run.weeks);
  return [
    `In any one ${period} that figure may come out anywhere from ${words.join(', and from ')}; ${percent(run.level)} of 100 do.`,
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
const SMALLEST_SHARE = 0.02;

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
    .filter((entry) => entry.hours.value >= SMALLEST_SHARE * mean.value)
    .sort((one, other) => other.hours.value - one.hours.value)
    .slice(0, MOST_CAUSES);
  if (work.length + waits.length === 0) return [];
  return [`Of the ${durationWords(mean)} of an average job: ${[...work, ...waits].map(words).join('; ')}.`];
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
