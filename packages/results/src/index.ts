export * from './estimate.ts';
export { resultsJsonSchema } from './json-schema.ts';
export * from './measures.ts';
export { parseResults, ResultsError } from './parse-results.ts';
export * from './results.ts';
export * from './trouble.ts';
