import { describe } from 'vitest';
import { testRecord } from '../replay.ts';
import { HOW_MANY } from './how-many.ts';

describe(HOW_MANY.title, () => {
  testRecord(HOW_MANY);
});
