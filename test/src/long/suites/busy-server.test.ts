import { testRecord } from '../replay.ts';
import { BUSY_SERVER } from './busy-server.ts';

testRecord(BUSY_SERVER);
