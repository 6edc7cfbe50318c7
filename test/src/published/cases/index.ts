import type { PublishedCase } from '../published-case.ts';
import { AMPLE_SERVERS } from './ample-servers.ts';
import {
  BATCHES_OF_ONE,
  CONSTANT_BATCHES,
  EXACTLY_FIVE,
  TEN_COLLECTED,
  THREE_TO_FIVE,
  UP_TO_FIVE,
} from './batches.ts';
import { BREAKDOWNS_ANY_TIME, BREAKDOWNS_WHILE_BUSY, EFFECTIVE_TIMES, HARE_QUEUE } from './breakdowns.ts';
import { ORDERS_OF_THREE, SOME_AT_ONCE, THREE_AT_ONCE } from './bulk-arrivals.ts';
import { DAILY_SHIFT, PRINT_IN_20_HOURS, PRINT_IN_24_HOURS, WEEKDAY_SHIFT } from './calendar-wait.ts';
import { CLOSED_LINES } from './closed-lines.ts';
import { CONSTANT_TIMES } from './constant-service.ts';
import { DAILY_WAVE } from './daily-wave.ts';
import { INVERSION, MOMENTS } from './distributions.ts';
import { FOUR_PHASES, TWO_PHASES } from './erlang-service.ts';
import { HYPEREXPONENTIAL_TIMES, LOGNORMAL_TIMES, TWO_TIMES, UNIFORM_TIMES } from './general-service.ts';
import { CAPACITIES, REPAIRERS, TECHNICIANS } from './interference.ts';
import { CONSTANT_GAPS, CONSTANT_TIMES_AT_SEVERAL, ERLANG_GAPS } from './other-arrivals.ts';
import { LOSS_CASES, PATIENCE_MEAN_2 } from './patience.ts';
import {
  INTERRUPTED_SECOND,
  INTERRUPTED_THIRD,
  PRIORITIES,
  PRIORITIES_AT_THREE,
  SHORTEST_FIRST,
} from './priorities.ts';
import { FEEDBACK, REWORK } from './rework.ts';
import { RUN_LENGTH } from './run-length.ts';
import { SET_UPS } from './set-ups.ts';
import { FIVE_SERVERS, THREE_SERVERS } from './several-servers.ts';
import { SINGLE_SERVER } from './single-server.ts';
import { TANDEM } from './tandem.ts';
import { TECHNICIAN_WEEK } from './technician-week.ts';
import { WEEKLY_PROFILE } from './weekly-profile.ts';
import { WORK_OUTSIDE } from './work-outside.ts';

export const QUEUES: readonly PublishedCase[] = [
  SINGLE_SERVER,
  THREE_SERVERS,
  FIVE_SERVERS,
  CONSTANT_TIMES,
  TANDEM,
];

export const SERVICE_TIMES: readonly PublishedCase[] = [
  LOGNORMAL_TIMES,
  UNIFORM_TIMES,
  HYPEREXPONENTIAL_TIMES,
  TWO_TIMES,
  TWO_PHASES,
  FOUR_PHASES,
];

export const BATCHES: readonly PublishedCase[] = [
  UP_TO_FIVE,
  TEN_COLLECTED,
  EXACTLY_FIVE,
  THREE_TO_FIVE,
  CONSTANT_BATCHES,
  BATCHES_OF_ONE,
  THREE_AT_ONCE,
  ORDERS_OF_THREE,
  SOME_AT_ONCE,
];

export const CALENDARS: readonly PublishedCase[] = [
  TECHNICIAN_WEEK,
  DAILY_SHIFT,
  WEEKDAY_SHIFT,
  PRINT_IN_20_HOURS,
  PRINT_IN_24_HOURS,
];

export const ARRIVALS: readonly PublishedCase[] = [
  CONSTANT_GAPS,
  ERLANG_GAPS,
  ...CONSTANT_TIMES_AT_SEVERAL,
  ...LOSS_CASES,
  PATIENCE_MEAN_2,
  ...AMPLE_SERVERS,
  WORK_OUTSIDE,
  DAILY_WAVE,
  WEEKLY_PROFILE,
];

export const ORDERS: readonly PublishedCase[] = [
  PRIORITIES,
  INTERRUPTED_SECOND,
  INTERRUPTED_THIRD,
  PRIORITIES_AT_THREE,
  SHORTEST_FIRST,
  FEEDBACK,
  REWORK,
  ...CLOSED_LINES,
];

export const TROUBLES: readonly PublishedCase[] = [
  BREAKDOWNS_WHILE_BUSY,
  BREAKDOWNS_ANY_TIME,
  ...EFFECTIVE_TIMES,
  SET_UPS,
  HARE_QUEUE,
  REPAIRERS,
  ...TECHNICIANS,
  ...CAPACITIES,
];

export const LAWS_OF_TIMES: readonly PublishedCase[] = [MOMENTS, INVERSION, RUN_LENGTH];
