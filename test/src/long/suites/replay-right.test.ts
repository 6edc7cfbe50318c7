import { describe } from 'vitest';
import { testRecord } from '../replay.ts';
import { REPLAY_RIGHT } from './replay-right.ts';

describe(REPLAY_RIGHT.title, () => {
  testRecord(REPLAY_RIGHT);
});
