/// <reference path="./jstat.d.ts" />
import jstat from 'jstat';

// The only door to jstat: the three inverse functions that were found right, with their limits beside the
// functions that call them.
export const { gammapinv, ibetainv } = jstat.jStat;
export const studentInverse = jstat.jStat.studentt.inv;
