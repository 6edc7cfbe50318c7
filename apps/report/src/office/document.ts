import { type Chart, chartsOf, doubtsChartsOf, optionsChart, planChartsOf } from '@buildweek/charts';
import type { DecisionAnswer, ReportDocument, Results } from '@buildweek/results';

export function isDecision(document: ReportDocument): document is DecisionAnswer {
  return document.format === 'buildweek decision';
}

/** The lab that is shown in full: the one that is recommended, or the only one. */
export function shownResults(document: ReportDocument): Results {
  return isDecision(document) ? (document.recommended ?? document.today) : document;
}

/** The name of the lab. */
export function nameOf(document: ReportDocument): string {
  return isDecision(document) ? document.scenarioName : document.scenario.name;
}

/** What the file is called in a list of files. */
export function titleOf(document: ReportDocument): string {
  return `${nameOf(document)} · ${isDecision(document) ? 'what to decide' : 'capacity of the lab'}`;
}

/** Charts of the options, the search and the doubts of a decision; none of a run. */
function decisionCharts(document: ReportDocument): Chart[] {
  if (!isDecision(document)) return [];
  return [
    ...optionsChart(document),
    ...(document.search === null ? [] : planChartsOf(document.search)),
    ...(document.doubts === null ? [] : doubtsChartsOf(document.doubts)),
  ];
}

/** Every chart of a document, each once; those of a decision first. */
export function officeCharts(document: ReportDocument): Chart[] {
  return [...decisionCharts(document), ...chartsOf(shownResults(document))];
}
