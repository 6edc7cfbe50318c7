import { describe } from 'vitest';
import { testStudies } from '../intervals/test-studies.ts';
import { MEAN_PRECISION } from './mean-precision.ts';

describe(MEAN_PRECISION.title, () => {
  testStudies(MEAN_PRECISION);
});
