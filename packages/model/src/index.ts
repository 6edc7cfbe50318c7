export type * from './calendar.ts';
export type * from './demand.ts';
export type * from './distribution.ts';
export type * from './initial-state.ts';
export type * from './lab.ts';
export type * from './resources.ts';
export type * from './stage.ts';
export type { Phase, Step } from './steps.ts';
export { stepsOf } from './steps.ts';
