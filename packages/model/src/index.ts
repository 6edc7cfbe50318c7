export type * from './build-time.ts';
export type * from './calendar.ts';
export type * from './demand.ts';
export type * from './distribution.ts';
export type * from './doubts.ts';
export type * from './economics.ts';
export type * from './initial-state.ts';
export type * from './lab.ts';
export type * from './outside.ts';
export type * from './part-shape.ts';
export type * from './resources.ts';
export type * from './staff-rules.ts';
export type * from './stage.ts';
export type { Phase, Step } from './steps.ts';
export { SENT_OUT, stepsOf } from './steps.ts';
export {
  PRECISION_MEASURES,
  type PrecisionAsked,
  type PrecisionMeasure,
  type StudySettings,
} from './study-settings.ts';
export type * from './targets.ts';
export type * from './trouble.ts';
export { NO_CHANGES, NO_CONDITIONS } from './trouble.ts';
export type * from './variation.ts';
