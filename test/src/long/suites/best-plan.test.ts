import { describe } from 'vitest';
import { testRecord } from '../replay.ts';
import { BEST_PLAN } from './best-plan.ts';

describe(BEST_PLAN.title, () => {
  testRecord(BEST_PLAN);
});
