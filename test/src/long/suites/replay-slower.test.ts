import { describe } from 'vitest';
import { testRecord } from '../replay.ts';
import { REPLAY_SLOWER } from './replay-slower.ts';

describe(REPLAY_SLOWER.title, () => {
  testRecord(REPLAY_SLOWER);
});
