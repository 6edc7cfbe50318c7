import type { TheoryCase } from '../theory-case.ts';
import { BATCHES } from './batches.ts';
import { LINES_AND_SHIFTS } from './lines-and-shifts.ts';
import { SEVERAL_SERVERS } from './several-servers.ts';
import { SINGLE_SERVER } from './single-server.ts';
import { TROUBLE } from './trouble.ts';

/** Everything that the installed program is checked against. */
export const THEORY_CASES: readonly TheoryCase[] = [
  ...SINGLE_SERVER,
  ...SEVERAL_SERVERS,
  ...BATCHES,
  ...LINES_AND_SHIFTS,
  ...TROUBLE,
];
