import { describe } from 'vitest';
import { testPromise } from '../promises/test-promise.ts';
import { PROMISED_NORMAL } from './promised-normal.ts';

describe(PROMISED_NORMAL.title, () => {
  testPromise(PROMISED_NORMAL);
});
