import { describe } from 'vitest';
import { testRecord } from '../replay.ts';
import { CHEAPEST_PLAN } from './cheapest-plan.ts';

describe(CHEAPEST_PLAN.title, () => {
  testRecord(CHEAPEST_PLAN);
});
