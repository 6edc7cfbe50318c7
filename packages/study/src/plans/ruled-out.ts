import type {
  AttendedWork,
  DemandStream,
  Lab,
  OnTimeTarget,
  PartType,
  ShareWithinTarget,
  Stage,
  Target,
} from '@buildweek/model';
import { expectedDemand, expectedSentOut } from '../hand/expected-demand.ts';
import type { CandidatePlan } from './plan-space.ts';

/**
 * Why a plan cannot meet a target, whatever luck it has; null when that cannot be said beforehand. Only what is
 * certain counts: money that is known, and jobs that can never be finished because nothing or nobody is there for a
 * stage. That more of something always helps is not assumed.
 *
 * @param weeks over which demand is averaged
 */
export function ruledOut(plan: CandidatePlan, targets: readonly Target[], weeks: number): string | null {
  for (const target of targets) {
    const reason = target.kind === 'budget' ? overBudget(plan, target) : neverEnough(plan.lab, target, weeks);
    if (reason !== null) return reason;
  }
  return null;
}

function overBudget(
  { committedCost, purchase }: CandidatePlan,
  { of, atMost, wording }: Extract<Target, { kind: 'budget' }>,
): string | null {
  const amount = of === 'purchases' ? purchase : committedCost;
  return amount !== null && amount > atMost ? `costs more than “${wording}”` : null;
}

/** Jobs that cannot be made at all are never in time: so many others there have to be. */
function neverEnough(lab: Lab, target: Target, weeks: number): string | null {
  if (target.kind !== 'share within' && target.kind !== 'on time') return null;
  // A single period may happen to have none of the jobs that cannot be made.
  if (target.meaning.kind !== 'long run') return null;
  // What is sometimes sent out may get round what is lacking.
  if (lab.demand.some(({ sentOut }) => sentOut !== null && !sentOut.always)) return null;
  const { part } = target.jobs;
  const range = { fromWeek: 0, weeks };
  let possible = 0;
  let impossible = 0;
  let lacking: string | null = null;
  for (const { stream, jobsPerWeek } of [...expectedDemand(lab, range), ...expectedSentOut(lab, range)]) {
    if (part !== null && stream.part !== part) continue;
    const share = countedShare(stream, target);
    const lacks = stream.sentOut?.always === true ? null : lackFor(lab, stream.part);
    const jobs = lacks === null ? mostJobs(stream, jobsPerWeek) : fewestJobs(stream, jobsPerWeek);
    if (share === 0 || jobs === 0) continue;
    if (share === null || jobs === null) return null;
    if (lacks === null) possible += share * jobs;
    else {
      impossible += share * jobs;
      lacking ??= lacks;
    }
  }
  // A share that is met exactly must not fail by rounding.
  if (lacking === null || possible >= (target.share - ROUNDING) * (possible + impossible)) return null;
  return `${lacking}, so that “${target.wording}” is out of reach`;
}

const ROUNDING = 1e-12;

/** So many jobs are left of those that cannot be finished: whoever may cancel has all the time for it. */
function fewestJobs({ arrivals, changes }: DemandStream, jobsPerWeek: number): number {
  return arrivals.kind === 'dated' ? jobsPerWeek * (1 - (changes.cancels?.chance ?? 0)) : jobsPerWeek;
}

/**
 * So many jobs may be there to be finished: those that are expected, with all that might be cancelled but is finished
 * before. Null where nothing bounds them.
 */
function mostJobs({ arrivals, changes }: DemandStream, jobsPerWeek: number): number | null {
  const kept = 1 - (changes.cancels?.chance ?? 0);
  if (arrivals.kind === 'kept in the lab' || kept === 0) return null;
  return arrivals.kind === 'dated' ? jobsPerWeek : jobsPerWeek / kept;
}

/** Share of the jobs of a stream that a target speaks of; null where a list of jobs says which of them are rush. */
function countedShare(
  { arrivals, rushShare, due, rushDue }: DemandStream,
  { kind, jobs }: ShareWithinTarget | OnTimeTarget,
): number | null {
  const normal = jobs.rush !== true && (kind === 'share within' || due.kind !== 'none');
  const rush = jobs.rush !== false && (kind === 'share within' || rushDue.kind !== 'none');
  if (normal === rush) return normal ? 1 : 0;
  if (arrivals.kind === 'dated' && arrivals.jobs.some((job) => job.rush !== null)) return null;
  return normal ? 1 - rushShare : rushShare;
}

/** What a part needs and the lab has not got; null when everything is there. */
function lackFor(lab: Lab, partName: string): string | null {
  const part = lab.parts.find(({ name }) => name === partName);
  if (part === undefined) return null;
  for (const stage of part.stages) {
    const lack = lackAt(lab, part, stage);
    if (lack !== null) return lack;
  }
  return null;
}

function lackAt(lab: Lab, part: PartType, stage: Stage): string | null {
  switch (stage.kind) {
    case 'wait':
      return null;
    case 'work':
      return lackOfPeople(lab, part, stage.work);
    case 'station': {
      if (lab.stations.find(({ name }) => name === stage.stationGroup)?.count === 0) {
        return `has no “${stage.stationGroup}” for “${part.name}”`;
      }
      return lackOfPeople(lab, part, stage.load) ?? lackOfPeople(lab, part, stage.unload);
    }
    case 'build': {
      const group = lab.machines.find(({ name }) => name === stage.machineGroup);
      if (group === undefined) return null;
      if (group.count === 0) return `has no “${group.name}” for “${part.name}”`;
      const works = [group.prepare, group.setUp, group.firstLayers, group.unload];
      return works.map((work) => lackOfPeople(lab, part, work)).find((lack) => lack !== null) ?? null;
    }
  }
}

function lackOfPeople(lab: Lab, part: PartType, work: AttendedWork | null): string | null {
  if (work === null) return null;
  const able = lab.people
    .filter(({ skills }) => skills.includes(work.skill))
    .reduce((sum, { count }) => sum + count, 0);
  if (able >= work.persons) return null;
  return able === 0
    ? `has nobody who can “${work.skill}”, which “${part.name}” needs`
    : `has ${able} of the ${work.persons} persons who have to “${work.skill}” at once for “${part.name}”`;
}
