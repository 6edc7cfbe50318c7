export * from './estimate.ts';
export { decimalsFor, type Figure, figureOf, formatNumber } from './figure.ts';
export { resultsJsonSchema } from './json-schema.ts';
export * from './measures.ts';
export { parseResults, ResultsError } from './parse-results.ts';
export * from './results.ts';
export { periodName, toldInDays } from './told-in.ts';
export { lastingGrowth, meanOfBand, type Trend, trendOf } from './trend.ts';
export * from './trouble.ts';
