export { awayChartsOf } from './away/away-charts-of.ts';
export { MILLIMETRES } from './build-fill.ts';
export { CHART_WIDTH, type Chart, type ChartSize } from './chart.ts';
export { chartsOf } from './charts-of.ts';
export { changeLine, OPTION_NAMES, reaches, shortChange } from './decision/option-words.ts';
export { optionsChart } from './decision/options-chart.ts';
export { doubtsChartsOf } from './doubts/doubts-charts-of.ts';
export {
  AT_A_TIME,
  DAYS,
  formatCount,
  formatEstimate,
  formatInterval,
  formatLevel,
  formatOrReason,
  formatPlain,
  formatRange,
  formatShare,
  formatValue,
  HOURS,
  HOURS_PER_WEEK,
  JOBS,
  keptTogether,
  PARTS,
  PERCENT,
  PLAIN,
  shareInWords,
  type Unit,
  unnamed,
} from './format.ts';
export { growthChartsOf } from './growth/growth-charts-of.ts';
export { familyOf, gatherHours, partsWithHours, segmentsOf } from './hour-families.ts';
export { stepName } from './hours-by-step.ts';
export { leadTimeUnit } from './lead-time-unit.ts';
export { familyName } from './learned/fitted-durations.ts';
export { learnedChartsOf } from './learned/learned-charts-of.ts';
export { type CaseRow, caseNote, caseRows } from './money/case-rows.ts';
export { COST_LABELS } from './money/cost-labels.ts';
export * from './palette.ts';
export { partChartsOf } from './part/part-charts-of.ts';
export { formatLength, formatPieces, MINUTES, spreadFigure } from './part/spread-words.ts';
export { buildStages, kindOfStretch, STRETCH_WORDS, stretchName } from './part/stretch-words.ts';
export { drawnWays } from './part/ways.ts';
export { comparisonChartsOf } from './plans/difference-chart.ts';
export { planChartsOf } from './plans/plan-charts-of.ts';
export { promiseChartsOf } from './promise/promise-charts-of.ts';
export { replayChartsOf } from './replay/replay-charts-of.ts';
export { replayUnit } from './replay/replay-unit.ts';
export { simulatedUse } from './simulated-use.ts';
export { shownOption, staffChartsOf } from './staff/staff-charts-of.ts';
export { confidenceNote, targetConfidence, targetFound, VERDICT_MARKS } from './target-words.ts';
export { textWidth } from './text-width.ts';
export { FONT } from './theme.ts';
export { watchedWeekChart } from './week/watched-week-chart.ts';
