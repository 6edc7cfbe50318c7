import { type Chart, chartsOf, doubtsChartsOf, planChartsOf } from '@buildweek/charts';
import type { DecisionAnswer, Results } from '@buildweek/results';

/** A document of which files for the office are made: what a run leaves behind, or a decision. */
export type OfficeDocument = Results | DecisionAnswer;

export function isDecision(document: OfficeDocument): document is DecisionAnswer {
  return document.format === 'buildweek decision';
}

/** The lab that is shown in full: the one that is recommended, or the only one. */
export function shownResults(document: OfficeDocument): Results {
  return isDecision(document) ? (document.recommended ?? document.today) : document;
}

/** The name of the lab. */
export function nameOf(document: OfficeDocument): string {
  return isDecision(document) ? document.scenarioName : document.scenario.name;
}

/** What the file is called in a list of files. */
export function titleOf(document: OfficeDocument): string {
  return `${nameOf(document)} · ${isDecision(document) ? 'what to decide' : 'capacity of the lab'}`;
}

/** Charts of the search and the doubts of a decision; none of a run. */
export function decisionCharts(document: OfficeDocument): Chart[] {
  if (!isDecision(document)) return [];
  return [
    ...(document.search === null ? [] : planChartsOf(document.search)),
    ...(document.doubts === null ? [] : doubtsChartsOf(document.doubts)),
  ];
}

/** Every chart of a document, each once; those of a decision first. */
export function officeCharts(document: OfficeDocument): Chart[] {
  return [...decisionCharts(document), ...chartsOf(shownResults(document))];
}
