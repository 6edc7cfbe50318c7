import type { History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { formatProblem, readScenario } from '@buildweek/scenario';
import {
  createInProcessExecutor,
  type ReplicationExecutor,
  runStudy,
  type StudyResults,
} from '@buildweek/study';
import { arrivalsOf, occupancyOf } from './occupancy.ts';

/** What came of playing a scenario. */
export interface Played {
  readonly lab: Lab;
  readonly results: StudyResults;
  /** One for each replication, for what `Results` does not tell; without their traces. */
  readonly histories: readonly History[];
  /** For each replication the share of time with 0, 1, 2, … jobs in the lab; empty unless it was traced. */
  readonly occupancies: readonly Float64Array[];
  /** For each replication the hours of arrivals since the start of the measured weeks; empty as well. */
  readonly arrivals: readonly Float64Array[];
}

/**
 * Plays a scenario text the way the command does: text, lab and settings, study, results.
 *
 * @param traced whether jobs in the lab and arrivals are followed through the trace
 * @throws Error when the text is not a scenario without problems and warnings, or cannot be played
 */
export async function play(text: string, traced = false): Promise<Played> {
  const reading = readScenario(text, 'published.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  const { lab, settings, warnings } = reading;
  if (warnings.length > 0) throw new Error(warnings.map(formatProblem).join('\n'));
  const histories: History[] = [];
  const occupancies: Float64Array[] = [];
  const arrivals: Float64Array[] = [];
  const executor = listening(createInProcessExecutor(), traced, (history) => {
    histories.push({ ...history, trace: null, states: null });
    if (history.trace === null) return;
    occupancies.push(occupancyOf(history, history.trace));
    arrivals.push(arrivalsOf(history, history.trace));
  });
  const outcome = await runStudy(lab, settings, executor, { queueWaits: true });
  if (outcome.kind === 'too few') throw new Error(outcome.reason);
  return { lab, results: outcome.results, histories, occupancies, arrivals };
}

/** An executor that shows each history to somebody else too. A trace changes nothing else of it. */
function listening(
  executor: ReplicationExecutor,
  trace: boolean,
  hear: (history: History) => void,
): ReplicationExecutor {
  return {
    async *run(lab, settings, stop) {
      const asked = settings.map((one) => ({ ...one, trace }));
      for await (const history of executor.run(lab, asked, stop)) {
        hear(history);
        yield history;
      }
    },
  };
}
