import { type JobClassHistory, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { JobClass } from '@buildweek/results';
import { jobClassOf } from './job-class.ts';
import { SampleStore } from './sample-store.ts';

/** Jobs of one part type and priority in one replication. */
export interface JobSample {
  readonly arrived: number;
  readonly unfinished: number;
  readonly promised: number;
  readonly onTime: number;
  /** Hours, ascending. */
  readonly leadTimes: Float64Array;
}

/** Jobs of one part type and priority, replication by replication. */
class JobCell {
  readonly part: string;
  readonly rush: boolean;
  private readonly leadTimes = new SampleStore();
  private readonly arrived: number[] = [];
  private readonly unfinished: number[] = [];
  private readonly promised: number[] = [];
  private readonly onTime: number[] = [];

  constructor({ part, rush }: JobClassHistory) {
    this.part = part;
    this.rush = rush;
  }

  get replications(): number {
    return this.arrived.length;
  }

  add(found: JobClassHistory): void {
    this.leadTimes.add(found.leadTimes, MILLISECONDS_PER_HOUR);
    this.arrived.push(found.arrived);
    this.unfinished.push(found.unfinished);
    this.promised.push(found.promised);
    this.onTime.push(found.onTime);
  }

  hasJobs(): boolean {
    return this.arrived.some((jobs) => jobs > 0);
  }

  sample(replication: number): JobSample {
    return {
      arrived: this.arrived[replication] ?? 0,
      unfinished: this.unfinished[replication] ?? 0,
      promised: this.promised[replication] ?? 0,
      onTime: this.onTime[replication] ?? 0,
      leadTimes: this.leadTimes.sample(replication),
    };
  }
}

/** Lead times and promises, for every class of jobs that is reported. */
export class JobSums {
  private readonly cells: readonly JobCell[];

  constructor(first: readonly JobClassHistory[]) {
    this.cells = first.map((one) => new JobCell(one));
  }

  add(classes: readonly JobClassHistory[]): void {
    this.cells.forEach((cell, index) => {
      const found = classes[index];
      if (found?.part !== cell.part || found.rush !== cell.rush) {
        throw new Error(`A history has no class of jobs "${cell.part}" where it is expected.`);
      }
      cell.add(found);
    });
  }

  /** Jobs that were not finished at the cap, and all jobs, over all replications. */
  count(): { jobs: number; unfinished: number } {
    let jobs = 0;
    let unfinished = 0;
    for (const sample of samplesOf(this.cells)) {
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
  return cells.some((cell) => cell.hasJobs());
}

/** The jobs of several classes as one, replication by replication. */
function samplesOf(cells: readonly JobCell[]): JobSample[] {
  const replications = cells[0]?.replications ?? 0;
  return Array.from({ length: replications }, (_, replication) => {
    const samples = cells.map((cell) => cell.sample(replication));
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
  const [first, ...others] = lists;
  if (first !== undefined && others.length === 0) return first;
  const joined = new Float64Array(lists.reduce((length, list) => length + list.length, 0));
  let position = 0;
  for (const list of lists) {
    joined.set(list, position);
    position += list.length;
  }
  return joined.sort();
}
