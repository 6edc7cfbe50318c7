import { describe } from 'vitest';
import { testStudies } from '../intervals/test-studies.ts';
import { BUSY_SERVER } from './busy-server.ts';

describe(BUSY_SERVER.title, () => {
  testStudies(BUSY_SERVER);
});
