import { describe } from 'vitest';
import { testStudies } from '../intervals/test-studies.ts';
import { PERCENTILE_PRECISION } from './percentile-precision.ts';

describe(PERCENTILE_PRECISION.title, () => {
  testStudies(PERCENTILE_PRECISION);
});
