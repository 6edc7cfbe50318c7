import type { ReplicationExecutor, StopSignal } from '@buildweek/study';
import { type CheckedLine, checkCase } from './check-case.ts';
import { REPLICATIONS, type TheoryCase } from './theory-case.ts';

/** How a check is played. */
export interface CheckAllOptions {
  readonly seed: string;
  /** Each plays one case at a time: threads live as long as their lab, so few threads for many labs start soonest. */
  readonly executors: readonly ReplicationExecutor[];
  readonly stop: StopSignal;
  /** Called after each replication. */
  readonly onProgress: (done: number, total: number) => void;
}

/**
 * Plays all cases. The lines are those of the cases in their order, whatever the number of executors.
 * @returns null when somebody stopped it
 */
export async function checkAll(
  cases: readonly TheoryCase[],
  { seed, executors, stop, onProgress }: CheckAllOptions,
): Promise<CheckedLine[] | null> {
  const lines = cases.reduce((sum, { values }) => sum + values.length, 0);
  const total = cases.length * REPLICATIONS;
  const checked: (CheckedLine[] | null)[] = cases.map(() => null);
  let done = 0;
  const waiting = cases.entries();
  const lanes = executors.map(async (executor) => {
    for (const [position, one] of waiting) {
      const onReplication = (): void => onProgress(++done, total);
      checked[position] = await checkCase(one, { seed, lines, executor, stop, onReplication });
      if (stop.aborted) return;
    }
  });
  await Promise.all(lanes);
  const found = checked.filter((own) => own !== null);
  return found.length === cases.length ? found.flat() : null;
}
