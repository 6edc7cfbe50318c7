import type { JobClassHistory } from '@buildweek/core';
import type { JobClass } from '@buildweek/results';
import { jobClassOf } from './job-class.ts';
import { toHours } from './units.ts';

/** Jobs of one part type and priority in one replication. */
export interface JobSample {
  readonly arrived: number;
  readonly unfinished: number;
  readonly promised: number;
  readonly onTime: number;
  /** Hours, ascending. */
  readonly leadTimes: Float64Array;
}

/** Jobs of one part type and priority: exact percentiles need every lead time, eight bytes each. */
interface JobCell {
  readonly part: string;
  readonly rush: boolean;
  readonly samples: JobSample[];
}

/** Lead times and promises, for every class of jobs that is reported. */
export class JobSums {
  private readonly cells: readonly JobCell[];

  constructor(first: readonly JobClassHistory[]) {
    this.cells = first.map(({ part, rush }) => ({ part, rush, samples: [] }));
  }

  add(classes: readonly JobClassHistory[]): void {
    this.cells.forEach((cell, index) => {
      const found = classes[index];
      if (found?.part !== cell.part || found.rush !== cell.rush) {
        throw new Error(`A history has no class of jobs "${cell.part}" where it is expected.`);
      }
      const { arrived, unfinished, promised, onTime } = found;
      cell.samples.push({ arrived, unfinished, promised, onTime, leadTimes: toHours(found.leadTimes) });
    });
  }

  /** Jobs that were not finished at the cap, and all jobs, over all replications. */
  count(): { jobs: number; unfinished: number } {
    let jobs = 0;
    let unfinished = 0;
    for (const sample of this.cells.flatMap((cell) => cell.samples)) {
      jobs += sample.arrived;
      unfinished += sample.unfinished;
    }
    return { jobs, unfinished };
  }

  /** All jobs, per part type; each by priority too where there are rush and normal jobs. */
  results(level: number): JobClass[] {
    const parts = [...new Set(this.cells.map((cell) => cell.part))];
    return [
      ...this.byPriority(null, this.cells, level),
      ...parts.flatMap((part) =>
        this.byPriority(
          part,
          this.cells.filter((cell) => cell.part === part),
          level,
        ),
      ),
    ];
  }

  /** All jobs together, for the precision that was asked for. */
  all(level: number): JobClass {
    return jobClassOf(null, 'all', samplesOf(this.cells), level);
  }

  private byPriority(part: string | null, cells: readonly JobCell[], level: number): JobClass[] {
    const all = jobClassOf(part, 'all', samplesOf(cells), level);
    const normal = cells.filter((cell) => !cell.rush);
    const rush = cells.filter((cell) => cell.rush);
    if (!hasJobs(normal) || !hasJobs(rush)) return [all];
    return [
      all,
      jobClassOf(part, 'normal', samplesOf(normal), level),
      jobClassOf(part, 'rush', samplesOf(rush), level),
    ];
  }
}

function hasJobs(cells: readonly JobCell[]): boolean {
  return cells.some((cell) => cell.samples.some((sample) => sample.arrived > 0));
}

/** The jobs of several classes as one, replication by replication. */
function samplesOf(cells: readonly JobCell[]): JobSample[] {
  const [first, ...others] = cells;
  if (first === undefined) return [];
  if (others.length === 0) return first.samples;
  return first.samples.map((_, replication) => {
    const samples = cells.flatMap((cell) => cell.samples[replication] ?? []);
    return {
      arrived: total(samples, (sample) => sample.arrived),
      unfinished: total(samples, (sample) => sample.unfinished),
      promised: total(samples, (sample) => sample.promised),
      onTime: total(samples, (sample) => sample.onTime),
      leadTimes: together(samples.map((sample) => sample.leadTimes)),
    };
  });
}

function total(samples: readonly JobSample[], value: (sample: JobSample) => number): number {
  return samples.reduce((sum, sample) => sum + value(sample), 0);
}

function together(lists: readonly Float64Array[]): Float64Array {
  const joined = new Float64Array(lists.reduce((length, list) => length + list.length, 0));
  let position = 0;
  for (const list of lists) {
    joined.set(list, position);
    position += list.length;
  }
  return joined.sort();
}
