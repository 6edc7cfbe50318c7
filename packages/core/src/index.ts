export { createCountSampler, meanOfCount } from './kernel/count-sampler.ts';
export { createLocalTime, type LocalTime } from './kernel/local-time.ts';
export { meanOf, varianceOf } from './kernel/moments.ts';
export { hoursWithin, union, type WorkingWindows, windowsOf } from './kernel/working-windows.ts';
export type * from './observe/history.ts';
export type * from './settings.ts';
export type { Simulator } from './simulate.ts';
export { createSimulator } from './simulate.ts';
