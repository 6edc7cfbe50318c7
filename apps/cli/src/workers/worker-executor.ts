import type { History, SimulationSettings } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReplicationExecutor, StopSignal } from '@buildweek/study';
import { Piscina } from 'piscina';

/** Tasks handed out for each worker: one to play and one to go on with at once. */
const TASKS_PER_WORKER = 2;

/** Plays replications on worker threads. */
export class WorkerExecutor implements ReplicationExecutor {
  private readonly workers: number;
  private pool: { readonly lab: Lab; readonly threads: Piscina } | null = null;

  /** @param workers number of threads, at least 1 */
  constructor(workers: number) {
    this.workers = workers;
  }

  async *run(
    lab: Lab,
    settings: readonly SimulationSettings[],
    stop: StopSignal | null,
  ): AsyncGenerator<History> {
    const threads = await this.threadsFor(lab, settings.length);
    const stopped = stopOf(stop);
    const playing = new Set<Promise<Ended>>();
    try {
      for (let next = 0; next < settings.length || playing.size > 0; ) {
        while (next < settings.length && playing.size < this.workers * TASKS_PER_WORKER) {
          const task: Promise<Ended> = ended(threads.run(settings[next++]), () => task);
          playing.add(task);
        }
        const first = await Promise.race([...playing, stopped.promise]);
        if (first === null) return;
        playing.delete(first.task());
        if ('error' in first) throw first.error;
        yield first.history;
      }
    } finally {
      stopped.forget();
    }
  }

  /** Ends all threads, whatever they are doing. */
  async close(): Promise<void> {
    const threads = this.pool?.threads;
    this.pool = null;
    await threads?.destroy();
  }

  private async threadsFor(lab: Lab, tasks: number): Promise<Piscina> {
    if (this.pool?.lab === lab) return this.pool.threads;
    await this.close();
    const threads = new Piscina({
      filename: new URL('./replication-worker.js', import.meta.url).href,
      name: 'play',
      workerData: lab,
      minThreads: Math.min(this.workers, tasks),
      maxThreads: this.workers,
    });
    this.pool = { lab, threads };
    return threads;
  }
}

type Ended = { task(): Promise<Ended> } & ({ readonly history: History } | { readonly error: unknown });

/** How a task ended, as a value: a task that nobody waits for any more may fail without a word. */
function ended(running: Promise<History>, task: () => Promise<Ended>): Promise<Ended> {
  return running.then(
    (history) => ({ task, history }),
    (error: unknown) => ({ task, error }),
  );
}

function stopOf(stop: StopSignal | null): { promise: Promise<null>; forget(): void } {
  let listener = (): void => {};
  const promise = new Promise<null>((resolve) => {
    listener = () => resolve(null);
    if (stop?.aborted) listener();
    else stop?.addEventListener('abort', listener);
  });
  return { promise, forget: () => stop?.removeEventListener('abort', listener) };
}
