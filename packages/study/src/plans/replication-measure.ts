import type { History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { MeasureUnit } from '@buildweek/results';
import type { Plan } from './plan.ts';

/**
 * Something that is looked at when plans are compared. Its long-run value is a ratio of two means over replications:
 * hours over jobs, jobs in time over jobs; the denominator is 1 for what every replication gives one value of.
 */
export interface ReplicationMeasure {
  /** Unique, and the same for all plans of a study. */
  readonly name: string;
  readonly unit: MeasureUnit;
  readonly better: 'lower' | 'higher' | 'neither';
  /** Numerator (Infinity when it lies beyond the end of what was played) and denominator of one replication. */
  of(history: History): readonly [numerator: number, denominator: number];
}

/**
 * The measures of a plan; every plan of a study has the same in the same order.
 *
 * @param lab as it is played, with the ignored weeks before its stated start
 */
export type MeasuresOfPlan = (lab: Lab, plan: Plan) => readonly ReplicationMeasure[];
