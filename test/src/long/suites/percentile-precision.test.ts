import { testRecord } from '../replay.ts';
import { PERCENTILE_PRECISION } from './percentile-precision.ts';

testRecord(PERCENTILE_PRECISION);
