import {
  createLocalTime,
  MILLISECONDS_PER_HOUR,
  meanOf,
  meanOfCount,
  varianceOf,
  varianceOfCount,
} from '@buildweek/core';
import type { ArrivalPattern, CountDistribution, DatedJob, Lab, PartType } from '@buildweek/model';
import { partOf } from '../expected-builds.ts';
import type { ExpectedDemand } from '../expected-demand.ts';
import { expectedVisits } from '../expected-visits.ts';
import { type Moments, variabilityOf } from '../formulas/process-time.ts';

/** What one demand stream sends through the lab in an average week. */
export interface StreamFlow {
  readonly demand: ExpectedDemand;
  readonly part: PartType;
  /** Pieces of a job. */
  readonly pieces: Moments;
  /** How uneven jobs arrive: variance over mean of their number in a long time; 1 for Poisson. */
  readonly arrivalVariability: number;
  /** How often a job passes each stage, because some of its pieces are rejected. */
  readonly passes: readonly number[];
  /** How often a piece does. */
  readonly pieceVisits: readonly number[];
}

/** The flows of a lab, without streams of which nothing is expected. */
export function streamFlows(lab: Lab, demands: readonly ExpectedDemand[]): StreamFlow[] {
  return demands
    .filter(({ jobsPerWeek }) => jobsPerWeek > 0)
    .map((demand) => {
      const part = partOf(lab, demand);
      const pieces = countMoments(demand.quantity);
      return {
        demand,
        part,
        pieces,
        arrivalVariability: arrivalVariability(lab, demand.stream.arrivals),
        passes: jobPasses(part, pieces.mean),
        pieceVisits: expectedVisits(part),
      };
    });
}

/**
 * Variance over mean of the number of arrivals in a long time. For bursts of N jobs at gaps with the squared
 * coefficient of variation c²: E[N] c² + Var[N] / E[N], which is 1 for single jobs at Poisson times. Hours of the week
 * without arrivals and growth are not in it. Source: D. R. Cox, "Renewal Theory" (1962), sections 4.2 and 8.3, for
 * the number of renewals and cumulative processes (from memory).
 */
function arrivalVariability(lab: Lab, arrivals: ArrivalPattern): number {
  switch (arrivals.kind) {
    case 'poisson':
      return inBursts(1, countMoments(arrivals.jobsPerArrival));
    case 'renewal': {
      const gap = { mean: meanOf(arrivals.gap), variance: varianceOf(arrivals.gap) };
      return inBursts(variabilityOf(gap), countMoments(arrivals.jobsPerArrival));
    }
    case 'dated':
      return variabilityOfDates(lab, arrivals.jobs);
    case 'kept in the lab':
      return 1;
  }
}

function inBursts(gapVariability: number, jobs: Moments): number {
  return jobs.mean * gapVariability + jobs.variance / jobs.mean;
}

/** Fewer dates than this say too little about their gaps: then they are taken as Poisson. */
const FEWEST_DATES = 10;

function variabilityOfDates(lab: Lab, jobs: readonly DatedJob[]): number {
  if (jobs.length < FEWEST_DATES) return 1;
  const localTime = createLocalTime(lab.clockChanges);
  const times = jobs.map(({ atHour }) => localTime.toElapsed(atHour * MILLISECONDS_PER_HOUR));
  times.sort((one, other) => one - other);
  const gaps = times.slice(1).map((time, index) => time - (times[index] ?? time));
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const variance = gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0) / gaps.length;
  return variabilityOf({ mean, variance });
}

function countMoments(distribution: CountDistribution): Moments {
  return { mean: meanOfCount(distribution), variance: varianceOfCount(distribution) };
}

/**
 * A job goes round again as long as one of its pieces is bad: of q pieces that are bad with chance p each time, the
 * rounds on top of the first are the sum over r ≥ 1 of 1 − (1 − p^r)^q, the mean of the largest of q geometric numbers.
 */
function jobPasses(part: PartType, pieces: number): number[] {
  const { stages } = part;
  const passes = stages.map(() => 1);
  stages.forEach((stage, index) => {
    if (stage.rejects === null) return;
    const { share, backTo } = stage.rejects;
    const further = furtherRounds(share, pieces);
    for (let position = stages.findIndex(({ name }) => name === backTo); position <= index; position++) {
      passes[position] = (passes[position] ?? 1) + further;
    }
  });
  return passes;
}

function furtherRounds(share: number, pieces: number): number {
  let rounds = 0;
  for (let bad = share; bad > 1e-9; bad *= share) rounds += 1 - (1 - bad) ** pieces;
  return rounds;
}
