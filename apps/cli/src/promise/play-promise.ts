import { availableParallelism } from 'node:os';
import type { PromisePlay } from '@buildweek/study';
import { EXIT, Failure } from '../failure.ts';
import { stopOnSignal } from '../stop-on-signal.ts';
import { ProgressBar } from '../terminal/progress-bar.ts';
import { WorkerExecutor } from '../workers/worker-executor.ts';

/**
 * Plays labs from the state of today on worker threads, with a progress bar.
 *
 * @param plays how often labs are played in all, about
 * @param work gives the answer, or null when it was stopped
 * @throws Failure with exit code 130 when it was stopped: it takes seconds, so nothing is kept
 */
export async function playPromise<Answer>(
  settings: Pick<PromisePlay, 'seed' | 'replications' | 'lastWeeks'>,
  workers: number | undefined,
  plays: number,
  work: (play: PromisePlay) => Promise<Answer | null>,
): Promise<Answer> {
  const { signal, forget } = stopOnSignal();
  const executor = new WorkerExecutor(workers ?? availableParallelism());
  const bar = new ProgressBar(process.stderr);
  let done = 0;
  try {
    const answer = await work({
      ...settings,
      executor,
      stop: signal,
      onReplication: () => {
        done++;
        const total = Math.max(done, plays * settings.replications);
        bar.show({ stage: 'replications', done, total, mayEndSooner: false });
      },
    });
    if (answer === null)
      throw new Failure(EXIT.stopped, 'Stopped before there was an answer; nothing was written.');
    return answer;
  } finally {
    bar.clear();
    forget();
    await executor.close();
  }
}
