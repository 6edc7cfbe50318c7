export * from './answer-parts.ts';
export * from './away-answer.ts';
export * from './builds.ts';
export * from './calibration-answer.ts';
export * from './comparison-answer.ts';
export { type CsvCell, csvText, harmlessCell } from './csv-text.ts';
export * from './decision-answer.ts';
export * from './doubts-answer.ts';
export * from './estimate.ts';
export { decimalsFor, type Figure, figureOf, formatNumber } from './figure.ts';
export * from './growth-answer.ts';
export * from './hand-lead-time.ts';
export {
  awayJsonSchema,
  calibrationJsonSchema,
  comparisonJsonSchema,
  decisionJsonSchema,
  doubtsJsonSchema,
  growthJsonSchema,
  learnedJsonSchema,
  partJsonSchema,
  planJsonSchema,
  promiseJsonSchema,
  replayJsonSchema,
  resultsJsonSchema,
  staffJsonSchema,
  weekJsonSchema,
} from './json-schema.ts';
export {
  LEARNED_VERSION,
  type LearnedAnswer,
  type LearnedBlock,
  type LearnedDuration,
  type LearnedRate,
  type LearnedWeeks,
  learnedAnswerSchema,
} from './learned-answer.ts';
export type { LogReading, ReadTable } from './log-reading.ts';
export { type WrittenUnit, writtenUnit } from './measure-unit-words.ts';
export * from './measures.ts';
export { dayText, momentText, timeOfDayText } from './moment-words.ts';
export * from './money.ts';
export {
  bareMoneyText,
  CENTS,
  moneyEstimateText,
  moneyFigure,
  moneyRangeText,
  moneyText,
  WHOLE,
} from './money-words.ts';
export { parseReportDocument, parseResults, type ReportDocument, ResultsError } from './parse-document.ts';
export * from './part-answer.ts';
export * from './plan-answer.ts';
export { planLabel } from './plan-label.ts';
export * from './plan-measure.ts';
export * from './promise-answer.ts';
export * from './replay-answer.ts';
export * from './results.ts';
export * from './sent-out.ts';
export * from './staff-answer.ts';
export * from './state-use.ts';
export * from './targets.ts';
export { periodName, toldInDays } from './told-in.ts';
export { lastingGrowth, meanOfBand, type Trend, trendOf } from './trend.ts';
export * from './trouble.ts';
export * from './watched-week.ts';
export { joinWords, MONTH_NAMES } from './words.ts';
export { signedText, writtenFigure, writtenText } from './written-figure.ts';
