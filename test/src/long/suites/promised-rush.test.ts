import { describe } from 'vitest';
import { testPromise } from '../promises/test-promise.ts';
import { PROMISED_RUSH } from './promised-rush.ts';

describe(PROMISED_RUSH.title, () => {
  testPromise(PROMISED_RUSH);
});
