import { promiseSuite } from '../promises/promise-suite.ts';

/** What is promised to rush requests. */
export const PROMISED_RUSH = promiseSuite('promised-rush', true);
