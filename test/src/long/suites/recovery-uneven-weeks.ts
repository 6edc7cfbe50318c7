import { KNOWN_LAWS, type KnownLaws } from '../recovery/known-log.ts';
import { recoverySuite } from '../recovery/recovery-suite.ts';

/** Busy and calm weeks, for both parts alike. */
export const UNEVEN_WEEKS: KnownLaws = { ...KNOWN_LAWS, weekVariation: 0.4 };

export const RECOVERY_UNEVEN_WEEKS = recoverySuite(
  'recovery-uneven-weeks',
  'The same logs, but that whole weeks are busier or calmer than chance by a factor that varies by 40 %',
  UNEVEN_WEEKS,
);
