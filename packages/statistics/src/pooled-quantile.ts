import { checkLevel, checkPairs, checkShare } from './checks.ts';
import {
  type Estimate,
  FEWEST_REPLICATIONS,
  type Never,
  type Refused,
  refused,
  tooFewReplications,
} from './interval.ts';
import { studentInterval } from './mean-interval.ts';
import { quantileRank } from './quantile.ts';
import { selectAcross } from './selection.ts';

/** Fewer jobs beyond a percentile than this say too little about it. */
const FEWEST_BEYOND = 10;
/**
 * More sections than 30 shorten the interval by hardly anything, fewer than 10 make it long and unsteady. Source:
 * B. Schmeiser, "Batch size effects in the analysis of simulation output", Operations Research 30 (1982), 556–568.
 */
const MOST_SECTIONS = 30;
const FEWEST_SECTIONS = 10;

/**
 * A percentile over all jobs of all replications. Unfinished jobs count as later than everything.
 *
 * The definition is number 1 of Hyndman and Fan, the smallest value that at least the share p of the jobs do not
 * exceed: it says exactly what "nine of ten jobs within" says, it is always a lead time that occurred, and it does
 * not interpolate between a finished job and one that never finished.
 * @param samples for each replication the values of its finished jobs, ascending
 * @param unfinished for each replication the number of its other jobs
 * @returns Infinity when more jobs were unfinished than p allows; NaN when there are no jobs
 * @throws RangeError for sides of different length, values that do not ascend, a count that is no whole number of at
 *   least 0, or unless 0 < p < 1
 */
export function pooledQuantile(
  samples: readonly Float64Array[],
  unfinished: ArrayLike<number>,
  p: number,
): number {
  checkShare('share', p);
  checkSamples(samples, unfinished);
  return quantileOf(samples, unfinished, 0, samples.length, p);
}

/**
 * A percentile over all jobs of all replications with an interval in which the replication, and never the job, is
 * the independent unit.
 *
 * Sectioning: whole replications are put together in 10 to 30 sections, as many as leave about 10 jobs beyond the
 * percentile to each; the percentile of each section is taken, and its spread is measured *about the pooled
 * percentile*, which stands in the middle of the interval too: a section's own percentile is biased, the pooled
 * one hardly. Student's t has the number of sections less 1 degrees of freedom. Where sections differ by one
 * replication the squares are weighted by their size.
 * Sources: S. Asmussen and P. W. Glynn, Stochastic Simulation (2007), sections III.5 and V.5; M. K. Nakayama,
 * "Confidence intervals for quantiles using sectioning when applying variance-reduction techniques", ACM
 * Transactions on Modeling and Computer Simulation 24 (2014), no. 4 (both from memory).
 * @param samples for each replication the values of its finished jobs, ascending
 * @param unfinished for each replication the number of its other jobs
 * @returns never when more jobs were unfinished than p allows; refused with fewer than 20 replications, with fewer
 *   than 10 jobs expected beyond the percentile (or below one under one half), or when that many were unfinished
 *   in a section that its percentile has no value
 * @throws RangeError as for the percentile alone, or unless 0 < level < 1
 */
export function pooledQuantileInterval(
  samples: readonly Float64Array[],
  unfinished: ArrayLike<number>,
  p: number,
  level: number,
): Estimate | Refused | Never {
  checkLevel(level);
  checkShare('share', p);
  const jobs = checkSamples(samples, unfinished);
  const replications = samples.length;
  if (replications < FEWEST_REPLICATIONS) return tooFewReplications(replications);
  const beyond = jobs * Math.min(p, 1 - p);
  // 100 jobs have 10 beyond 0.9, though 1 − 0.9 is a little less than 0.1 in binary.
  if (beyond < FEWEST_BEYOND * (1 - 1e-12)) return tooFewBeyond(jobs, beyond, p);
  const value = quantileOf(samples, unfinished, 0, replications, p);
  if (value === Number.POSITIVE_INFINITY) {
    return { kind: 'never', reason: `More than ${percent(1 - p)} of the jobs were unfinished at the end.` };
  }
  const sections = Math.min(
    MOST_SECTIONS,
    replications,
    Math.max(FEWEST_SECTIONS, Math.floor(beyond / FEWEST_BEYOND)),
  );
  let squares = 0;
  for (let section = 0; section < sections; section++) {
    const first = Math.floor((section * replications) / sections);
    const end = Math.floor(((section + 1) * replications) / sections);
    const own = quantileOf(samples, unfinished, first, end, p);
    if (!Number.isFinite(own)) return sectionWithoutValue(own, first, end, p);
    squares += (end - first) * (own - value) ** 2;
  }
  const error = Math.sqrt(squares / ((sections - 1) * replications));
  const interval = studentInterval(value, error, sections - 1, level);
  return { kind: 'estimate', ...interval, replications };
}

/** The percentile of the replications from `first` up to and without `end`. */
function quantileOf(
  samples: readonly Float64Array[],
  unfinished: ArrayLike<number>,
  first: number,
  end: number,
  p: number,
): number {
  let finished = 0;
  let jobs = 0;
  for (let index = first; index < end; index++) {
    const own = (samples[index] as Float64Array).length;
    finished += own;
    jobs += own + (unfinished[index] as number);
  }
  if (jobs === 0) return Number.NaN;
  const rank = quantileRank(jobs, p);
  return rank > finished ? Number.POSITIVE_INFINITY : selectAcross(samples.slice(first, end), rank);
}

/** @returns the number of jobs */
function checkSamples(samples: readonly Float64Array[], unfinished: ArrayLike<number>): number {
  checkPairs(samples, unfinished);
  let jobs = 0;
  samples.forEach((sample, replication) => {
    const others = unfinished[replication] as number;
    if (!(Number.isInteger(others) && others >= 0)) {
      throw new RangeError(`Replication ${replication} cannot have ${others} unfinished jobs`);
    }
    let before = Number.NEGATIVE_INFINITY;
    for (const value of sample) {
      if (!(value >= before && value < Number.POSITIVE_INFINITY)) {
        throw new RangeError(`The values of replication ${replication} do not ascend to a finite value`);
      }
      before = value;
    }
    jobs += sample.length + others;
  });
  return jobs;
}

function tooFewBeyond(jobs: number, beyond: number, p: number): Refused {
  const side = p < 0.5 ? 'below' : 'beyond';
  return refused(
    `The ${percent(p)} point needs at least ${FEWEST_BEYOND} jobs expected ${side} it; of ${jobs} jobs there are ${Number(beyond.toPrecision(2))}.`,
  );
}

function sectionWithoutValue(own: number, first: number, end: number, p: number): Refused {
  const which = `replications ${first + 1} to ${end}`;
  return refused(
    Number.isNaN(own)
      ? `No interval can be given for the ${percent(p)} point: ${which} have no such job.`
      : `No interval can be given for the ${percent(p)} point: in ${which} more than ${percent(1 - p)} of the jobs were unfinished at the end.`,
  );
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(6))} %`;
}
