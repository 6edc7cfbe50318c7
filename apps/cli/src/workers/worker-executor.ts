import { serialize } from 'node:v8';
import type { History, SimulationSettings } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReplicationExecutor, StopSignal } from '@buildweek/study';
import { Piscina } from 'piscina';
import type { ReplicationTask } from './replication-task.ts';

/** Tasks handed out for each worker: one to play and one to go on with at once. */
const TASKS_PER_WORKER = 2;

/** Plays replications on worker threads, which stay for any number of labs. */
export class WorkerExecutor implements ReplicationExecutor {
  private readonly workers: number;
  private threads: Piscina | null = null;
  private readonly known = new WeakMap<Lab, Pick<ReplicationTask, 'lab' | 'bytes'>>();
  private nextLab = 0;

  /** @param workers number of threads, at least 1 */
  constructor(workers: number) {
    this.workers = workers;
  }

  async *run(
    lab: Lab,
    settings: readonly SimulationSettings[],
    stop: StopSignal | null,
  ): AsyncGenerator<History> {
    const threads = this.threadsFor(settings.length);
    const shared = this.shared(lab);
    const arrivals = new Arrivals();
    const wake = (): void => arrivals.wake();
    stop?.addEventListener('abort', wake);
    try {
      let begun = 0;
      for (let received = 0; received < settings.length; received++) {
        while (begun < settings.length && begun - received < this.workers * TASKS_PER_WORKER) {
          arrivals.expect(threads.run({ ...shared, settings: settings[begun++] }));
        }
        const arrived = await arrivals.next(() => stop?.aborted ?? false);
        if (arrived === null) return;
        if ('error' in arrived) throw arrived.error;
        yield arrived.history;
      }
    } finally {
      stop?.removeEventListener('abort', wake);
    }
  }

  /** Ends all threads, whatever they are doing. */
  async close(): Promise<void> {
    const { threads } = this;
    this.threads = null;
    await threads?.destroy();
  }

  private threadsFor(tasks: number): Piscina {
    this.threads ??= new Piscina({
      filename: new URL('./replication-worker.js', import.meta.url).href,
      name: 'play',
      minThreads: Math.min(this.workers, tasks),
      maxThreads: this.workers,
    });
    return this.threads;
  }

  private shared(lab: Lab): Pick<ReplicationTask, 'lab' | 'bytes'> {
    const known = this.known.get(lab);
    if (known !== undefined) return known;
    const serialized = serialize(lab);
    const bytes = new SharedArrayBuffer(serialized.byteLength);
    new Uint8Array(bytes).set(serialized);
    const shared = { lab: this.nextLab++, bytes };
    this.known.set(lab, shared);
    return shared;
  }
}

type Arrived = { readonly history: History } | { readonly error: unknown };

/** Histories in the order in which they arrive. (A race of promises would keep something of every one it has seen.) */
class Arrivals {
  private readonly ready: Arrived[] = [];
  private waiting: (() => void) | null = null;

  expect(running: Promise<History>): void {
    const arrive = (arrived: Arrived): void => {
      this.ready.push(arrived);
      this.wake();
    };
    running.then(
      (history) => arrive({ history }),
      (error: unknown) => arrive({ error }),
    );
  }

  wake(): void {
    this.waiting?.();
    this.waiting = null;
  }

  /** The next one, or null when it is time to stop. */
  async next(isStopped: () => boolean): Promise<Arrived | null> {
    for (;;) {
      if (isStopped()) return null;
      const arrived = this.ready.shift();
      if (arrived !== undefined) return arrived;
      await new Promise<void>((resolve) => {
        this.waiting = resolve;
      });
    }
  }
}
