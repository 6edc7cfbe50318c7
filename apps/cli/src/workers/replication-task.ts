import type { SimulationSettings } from '@buildweek/core';

/** What a worker thread is asked to play. */
export interface ReplicationTask {
  /** Number of the lab; the same number is the same lab. */
  readonly lab: number;
  /** The lab, serialized by `node:v8` once and shared by all tasks, so that a task costs next to nothing to hand over. */
  readonly bytes: SharedArrayBuffer;
  readonly settings: SimulationSettings;
}
