import type { History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { formatProblem, readScenario } from '@buildweek/scenario';
import {
  createInProcessExecutor,
  type ReplicationExecutor,
  runStudy,
  type StudyResults,
} from '@buildweek/study';

/** What came of playing a scenario, and the single waits that `Results` only gives percentiles of. */
export interface Played {
  readonly lab: Lab;
  readonly results: StudyResults;
  /** Hours of all visits to a queue, one ascending list for each replication; by name of the queue. */
  readonly waits: ReadonlyMap<string, readonly Float64Array[]>;
}

/**
 * Plays a scenario text the way the command does: text, lab and settings, study, results.
 *
 * @throws Error when the text is not a scenario without problems and warnings, or cannot be played
 */
export async function play(text: string): Promise<Played> {
  const reading = readScenario(text, 'published.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  const { lab, settings, warnings } = reading;
  if (warnings.length > 0) throw new Error(warnings.map(formatProblem).join('\n'));
  const waits = new Map<string, Float64Array[]>();
  const executor = listening(createInProcessExecutor(), ({ queues }) => {
    for (const queue of queues) {
      const hours = queue.waits?.map((wait) => wait / 3_600_000) ?? new Float64Array();
      waits.set(queue.name, [...(waits.get(queue.name) ?? []), hours]);
    }
  });
  const outcome = await runStudy(lab, settings, executor, { queueWaits: true });
  if (outcome.kind === 'too few') throw new Error(outcome.reason);
  return { lab, results: outcome.results, waits };
}

/** An executor that shows each history to somebody else too. */
function listening(executor: ReplicationExecutor, hear: (history: History) => void): ReplicationExecutor {
  return {
    async *run(lab, settings, stop) {
      for await (const history of executor.run(lab, settings, stop)) {
        hear(history);
        yield history;
      }
    },
  };
}
