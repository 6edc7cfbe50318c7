import { describe } from 'vitest';
import { testValue } from '../values/test-value.ts';
import { PAIRED_DIFFERENCE, TRUE_DIFFERENCE } from './paired-difference.ts';

describe(PAIRED_DIFFERENCE.title, () => {
  testValue(PAIRED_DIFFERENCE, TRUE_DIFFERENCE);
});
