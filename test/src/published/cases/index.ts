import type { PublishedCase } from '../published-case.ts';
import { BATCHES_OF_ONE, CONSTANT_BATCHES, EXACTLY_FIVE, THREE_TO_FIVE, UP_TO_FIVE } from './batches.ts';
import { ORDERS_OF_THREE, SOME_AT_ONCE, THREE_AT_ONCE } from './bulk-arrivals.ts';
import { DAILY_SHIFT, PRINT_IN_20_HOURS, PRINT_IN_24_HOURS, WEEKDAY_SHIFT } from './calendar-wait.ts';
import { CONSTANT_TIMES } from './constant-service.ts';
import { FOUR_PHASES, TWO_PHASES } from './erlang-service.ts';
import { HYPEREXPONENTIAL_TIMES, LOGNORMAL_TIMES, TWO_TIMES, UNIFORM_TIMES } from './general-service.ts';
import { FIVE_SERVERS, THREE_SERVERS } from './several-servers.ts';
import { SINGLE_SERVER } from './single-server.ts';
import { TANDEM } from './tandem.ts';
import { TECHNICIAN_WEEK } from './technician-week.ts';

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
