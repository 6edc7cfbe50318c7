import { SPEED_MEASURE } from '@buildweek/results';

/** By what the best plan is the best; both are the better the smaller. */
export const BEST_MEASURES = {
  late: { measure: 'jobs on time', words: 'the smallest share of late jobs' },
  p90: {
    measure: SPEED_MEASURE,
    words: 'the shortest time within which nine of ten jobs are finished',
  },
} as const;
export type BestMeasure = keyof typeof BEST_MEASURES;
