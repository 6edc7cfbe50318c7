import { testRecord } from '../replay.ts';
import { MEAN_PRECISION } from './mean-precision.ts';

testRecord(MEAN_PRECISION);
