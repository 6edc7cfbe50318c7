import type { History, SimulationSettings } from '@buildweek/core';
import type { Lab } from '@buildweek/model';

/** Says that somebody wants to stop; an `AbortSignal` is one. */
export interface StopSignal {
  readonly aborted: boolean;
  addEventListener(type: 'abort', listener: () => void): void;
  removeEventListener(type: 'abort', listener: () => void): void;
}

/**
 * Plays replications: the port behind which worker threads or web workers stand. A study is the same whoever plays
 * it, since the histories are put into the order of their replications before anything is made of them.
 */
export interface ReplicationExecutor {
  /**
   * @param lab the lab as plain data
   * @param settings one entry for each replication wanted
   * @param stop once aborted no further replication is begun, and the histories end
   * @returns the histories, in any order
   */
  run(lab: Lab, settings: readonly SimulationSettings[], stop: StopSignal | null): AsyncIterable<History>;
}
