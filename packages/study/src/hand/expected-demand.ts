import {
  createLocalTime,
  HOURS_PER_WEEK,
  MILLISECONDS_PER_HOUR,
  MILLISECONDS_PER_WEEK,
  meanOf,
  meanOfCount,
} from '@buildweek/core';
import type { ArrivalPattern, CountDistribution, DemandStream, Lab } from '@buildweek/model';

const HOURS_PER_MONTH = (365.25 / 12) * 24;

/** What one demand stream asks for in an average week. */
export interface ExpectedDemand {
  readonly stream: DemandStream;
  readonly jobsPerWeek: number;
  readonly piecesPerWeek: number;
  /** Pieces of one job. */
  readonly quantity: CountDistribution;
}

/** The weeks over which demand is averaged, counted from the start of the plan. */
export interface WeekRange {
  readonly fromWeek: number;
  readonly weeks: number;
}

/**
 * Expected jobs and pieces of each stream, averaged over the weeks. An endless backlog asks for whatever the lab
 * can do, so it has no demand of its own; what is always made outside asks nothing of the lab. What is sent out only now
 * and then counts in full.
 */
export function expectedDemand(lab: Lab, range: WeekRange): ExpectedDemand[] {
  return lab.demand.map((stream) =>
    stream.sentOut?.always ? demandOf(stream, 0) : demandOfStream(lab, stream, range),
  );
}

/** Expected jobs and pieces of the streams that are always made outside. */
export function expectedSentOut(lab: Lab, range: WeekRange): ExpectedDemand[] {
  return lab.demand
    .filter(({ sentOut }) => sentOut?.always)
    .map((stream) => demandOfStream(lab, stream, range));
}

function demandOfStream(lab: Lab, stream: DemandStream, range: WeekRange): ExpectedDemand {
  const { arrivals, changes } = stream;
  if (arrivals.kind === 'dated') return datedDemand(lab, stream, arrivals, range);
  if (arrivals.kind === 'kept in the lab') return demandOf(stream, 0);
  const asked = arrivalsPerWeek(arrivals, range) * meanOfCount(arrivals.jobsPerArrival);
  // What is withdrawn may have cost nothing yet: only the rest is sure to be asked for.
  return demandOf(stream, asked * (1 - (changes.cancels?.chance ?? 0)));
}

function demandOf(stream: DemandStream, jobsPerWeek: number): ExpectedDemand {
  const { quantity } = stream;
  return { stream, jobsPerWeek, piecesPerWeek: jobsPerWeek * meanOfCount(quantity), quantity };
}

function arrivalsPerWeek(
  arrivals: Exclude<ArrivalPattern, { kind: 'dated' | 'kept in the lab' }>,
  range: WeekRange,
): number {
  if (arrivals.kind === 'renewal') return HOURS_PER_WEEK / meanOf(arrivals.gap);
  const perWeek = (1 + arrivals.growthPerMonth) ** (HOURS_PER_WEEK / HOURS_PER_MONTH);
  let growth = 0;
  for (let week = 0; week < range.weeks; week++) growth += perWeek ** (range.fromWeek + week);
  return (arrivals.perWeek * growth) / range.weeks;
}

function datedDemand(
  lab: Lab,
  stream: DemandStream,
  arrivals: Extract<ArrivalPattern, { kind: 'dated' }>,
  range: WeekRange,
): ExpectedDemand {
  const localTime = createLocalTime(lab.clockChanges);
  const mean = meanOfCount(stream.quantity);
  const pieces = arrivals.jobs.flatMap((job) => {
    const week = localTime.toElapsed(job.atHour * MILLISECONDS_PER_HOUR) / MILLISECONDS_PER_WEEK;
    return week >= range.fromWeek && week < range.fromWeek + range.weeks ? [job.quantity ?? mean] : [];
  });
  const piecesPerWeek = pieces.reduce((sum, value) => sum + value, 0) / range.weeks;
  return {
    stream,
    jobsPerWeek: pieces.length / range.weeks,
    piecesPerWeek,
    quantity: pieces.length === 0 ? stream.quantity : { kind: 'list', values: pieces },
  };
}
