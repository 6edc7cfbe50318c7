import { createSimulator, type Simulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReplicationExecutor } from './executor.ts';

/**
 * Plays one replication after the other where it is called.
 * @param breathe awaited before each replication, so that the caller's surroundings (a page, a terminal) get their
 *   turn; by default nothing but the microtask queue does
 */
export function createInProcessExecutor(breathe: () => Promise<void> = async () => {}): ReplicationExecutor {
  let ready: { readonly lab: Lab; readonly simulator: Simulator } | null = null;
  return {
    async *run(lab, settings, stop) {
      if (ready?.lab !== lab) ready = { lab, simulator: createSimulator(lab) };
      // Another run with another lab may begin while this one breathes.
      const { simulator } = ready;
      for (const one of settings) {
        await breathe();
        if (stop?.aborted) return;
        yield simulator.simulate(one);
      }
    },
  };
}
