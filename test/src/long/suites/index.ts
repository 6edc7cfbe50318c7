import { intervalSuite } from '../intervals/interval-suite.ts';
import type { Suite } from '../suite.ts';
import { BEST_PLAN } from './best-plan.ts';
import { BUSY_SERVER } from './busy-server.ts';
import { CHEAPEST_PLAN } from './cheapest-plan.ts';
import { HOW_MANY } from './how-many.ts';
import { MEAN_PRECISION } from './mean-precision.ts';
import { NET_PRESENT_VALUE } from './net-present-value.ts';
import { PAIRED_DIFFERENCE } from './paired-difference.ts';
import { PERCENTILE_PRECISION } from './percentile-precision.ts';
import { PROMISED_NORMAL } from './promised-normal.ts';
import { PROMISED_RUSH } from './promised-rush.ts';
import { RECOVERY } from './recovery.ts';
import { RECOVERY_UNEVEN_WEEKS } from './recovery-uneven-weeks.ts';
import { REPLAY_RIGHT } from './replay-right.ts';
import { REPLAY_SLOWER } from './replay-slower.ts';

/** All that `npm run test:long` plays. */
export const SUITES: readonly Suite[] = [
  ...[BUSY_SERVER, MEAN_PRECISION, PERCENTILE_PRECISION].map(intervalSuite),
  PAIRED_DIFFERENCE,
  NET_PRESENT_VALUE,
  CHEAPEST_PLAN,
  HOW_MANY,
  BEST_PLAN,
  PROMISED_NORMAL,
  PROMISED_RUSH,
  REPLAY_RIGHT,
  REPLAY_SLOWER,
  RECOVERY,
  RECOVERY_UNEVEN_WEEKS,
];
