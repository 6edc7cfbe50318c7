import type { ReportDocument, Results, WatchedWeek } from '@buildweek/results';
import { middleWeek, replayOf, watchedWeekOf } from '@buildweek/study';
import { programVersion } from '../program-version.ts';

/** The page of a document. Charts take a while to load, so that they are, and only then. */
export async function reportPage(document: ReportDocument): Promise<string> {
  const { renderDecision, renderReport } = await import('@buildweek/report');
  if (document.format === 'buildweek results') return renderReport(document, typicalWeek(document));
  return renderDecision(document, typicalWeek(document.recommended ?? document.today));
}

/** The week in the middle of the first replication; null when another version of the program played it otherwise. */
function typicalWeek({ lab, run, scenario, program }: Results): WatchedWeek | null {
  if (program.version !== programVersion()) return null;
  const watched = { name: scenario.name, lab, run };
  return watchedWeekOf(replayOf(lab, run, 0), watched, middleWeek(run.weeks));
}
