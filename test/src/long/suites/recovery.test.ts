import { describe } from 'vitest';
import { KNOWN_LAWS } from '../recovery/known-log.ts';
import { testRecovery } from '../recovery/test-recovery.ts';
import { RECOVERY } from './recovery.ts';

describe(RECOVERY.title, () => {
  testRecovery(RECOVERY, KNOWN_LAWS);
});
