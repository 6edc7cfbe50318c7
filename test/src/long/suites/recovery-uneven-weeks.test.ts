import { describe } from 'vitest';
import { testRecovery } from '../recovery/test-recovery.ts';
import { RECOVERY_UNEVEN_WEEKS, UNEVEN_WEEKS } from './recovery-uneven-weeks.ts';

describe(RECOVERY_UNEVEN_WEEKS.title, () => {
  testRecovery(RECOVERY_UNEVEN_WEEKS, UNEVEN_WEEKS);
});
