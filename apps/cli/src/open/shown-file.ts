import { basename } from 'node:path';
import { FEWEST_REPLICATIONS } from '@buildweek/statistics';
import { runStudy } from '@buildweek/study';
import { resultsOf } from '../commands/run.ts';
import { Failure } from '../failure.ts';
import { readText } from '../files/read-file.ts';
import { reportPage } from '../files/report-page.ts';
import { readReportFile } from '../files/results-file.ts';
import { readingOf } from '../files/scenario-file.ts';
import { programVersion } from '../program-version.ts';
import type { WorkerExecutor } from '../workers/worker-executor.ts';

/** How a scenario is played for the page. */
export interface ShownFileOptions {
  readonly replications: number;
  readonly executor: WorkerExecutor;
  /** Called with what goes on, one sentence. */
  readonly onProgress: (words: string) => void;
}

/** So many replications are played where nothing else is said: enough for intervals, and soon done. */
export const QUICK_REPLICATIONS = FEWEST_REPLICATIONS;

/**
 * The page of a file as it is now: of a scenario that is played quickly, of results that are there, or of what is wrong
 * with the file.
 *
 * @returns null when somebody stopped
 */
export async function pageOfFile(
  path: string,
  { replications, executor, onProgress }: ShownFileOptions,
  stop: AbortSignal,
): Promise<string | null> {
  const { renderProblems, renderWaiting } = await import('@buildweek/report');
  const name = basename(path);
  try {
    if (/\.json$/i.test(path)) {
      return await reportPage(readReportFile(path));
    }
    const text = readText(path, 'scenario');
    const reading = readingOf(text, path, '');
    if (reading.kind === 'problems') return renderProblems(name, reading.problems, programVersion());
    onProgress(`Playing ${reading.lab.name} …`);
    const outcome = await runStudy(
      reading.lab,
      { ...reading.settings, replications, precision: null },
      executor,
      {
        stop,
        targets: reading.targets,
        economics: reading.economics,
        onProgress: ({ stage, done, total }) =>
          onProgress(
            stage === 'pilot'
              ? `Looking how many weeks to leave out: ${done} of ${total} replications.`
              : `Playing ${reading.lab.name}: ${done} of ${total} replications.`,
          ),
      },
    );
    if (outcome.kind === 'too few') return null;
    return await reportPage(resultsOf({ text, reading }, outcome.results));
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    return renderWaiting(name, error.message, programVersion());
  }
}
