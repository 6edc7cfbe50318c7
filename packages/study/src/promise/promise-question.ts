import type { InitialJob, Lab, Process } from '@buildweek/model';
import type { PromiseRequest } from '@buildweek/results';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';

/** A route on which the request can be made, with one finish. */
export interface AskedRequestWay {
  readonly route: string;
  readonly finish: string;
  readonly process: Process;
  readonly material: string;
  readonly isOwn: boolean;
  /** Everything that the lab has to do, with a demand for the request that brings no jobs. */
  readonly lab: Lab;
  /** Name of that demand. */
  readonly demand: string;
}

export interface PromiseQuestion {
  readonly request: PromiseRequest;
  /** At least one with the finish that is asked for. */
  readonly ways: readonly AskedRequestWay[];
  readonly impossible: readonly { readonly way: string; readonly reason: string }[];
}

/** How labs are played from the state of today. */
export interface PromisePlay {
  readonly seed: string;
  readonly replications: number;
  /** Weeks from the start of the week in which the state holds. */
  readonly lastWeeks: number;
  readonly executor: ReplicationExecutor;
  readonly stop: StopSignal | null;
  /** Called after every replication. */
  readonly onReplication: () => void;
}

/** What a job in the lab is called: by its name, else by its number, from 1; by both where others have the same name. */
export function jobName(jobs: readonly InitialJob[], position: number): string {
  const name = jobs[position]?.name;
  const number = `job ${position + 1}`;
  if (name === undefined) return number;
  return jobs.filter((job) => job.name === name).length > 1 ? `${name} (${number})` : name;
}

/** Whether a job is called by its number, which it only has in one state of the lab. */
export function isNumbered(name: string): boolean {
  return /^job \d+$|\(job \d+\)$/.test(name);
}
