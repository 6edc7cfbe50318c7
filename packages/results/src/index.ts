export * from './estimate.ts';
export * from './measures.ts';
export * from './results.ts';
