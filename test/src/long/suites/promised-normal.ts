import { promiseSuite } from '../promises/promise-suite.ts';

/** What is promised to requests that are as urgent as most. */
export const PROMISED_NORMAL = promiseSuite('promised-normal', false);
