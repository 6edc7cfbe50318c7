import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Wanted } from './repetition-worker.ts';
import type { Suite } from './suite.ts';

/** Plays all repetitions of suites on all cores. */
export class RepetitionWorkers {
  private readonly workers: readonly Worker[];

  constructor() {
    this.workers = Array.from(
      { length: availableParallelism() },
      () => new Worker(new URL('./repetition-worker.js', import.meta.url)),
    );
  }

  /**
   * @param onOutcome called after each repetition with how many are done
   * @returns the lines in the order of the repetitions, whoever played them
   */
  async playAll(suite: Suite, onOutcome: (done: number) => void): Promise<string[]> {
    const lines: string[] = [];
    let begun = 0;
    let done = 0;
    await Promise.all(
      this.workers.map(async (worker) => {
        while (begun < suite.repetitions) {
          const repetition = begun++;
          lines[repetition] = await playOn(worker, { suite: suite.name, repetition });
          onOutcome(++done);
        }
      }),
    );
    return lines;
  }

  async close(): Promise<void> {
    await Promise.all(this.workers.map((worker) => worker.terminate()));
  }
}

function playOn(worker: Worker, wanted: Wanted): Promise<string> {
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', (line: string) => {
      worker.off('error', reject);
      resolve(line);
    });
    worker.postMessage(wanted);
  });
}
