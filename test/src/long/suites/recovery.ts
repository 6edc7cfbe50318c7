import { KNOWN_LAWS } from '../recovery/known-log.ts';
import { recoverySuite } from '../recovery/recovery-suite.ts';

export const RECOVERY = recoverySuite(
  'recovery',
  'Logs of 52 weeks with Poisson demand of 12 and 3 jobs a week, lognormal hand work, gamma prints of two machines, failed builds and breakdowns',
  KNOWN_LAWS,
);
