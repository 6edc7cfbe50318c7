export { createCountSampler } from './kernel/count-sampler.ts';
export { meanOf, varianceOf } from './kernel/moments.ts';
export type * from './observe/history.ts';
export type * from './settings.ts';
export type { Simulator } from './simulate.ts';
export { createSimulator } from './simulate.ts';
