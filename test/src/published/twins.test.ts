import { describe, expect, it } from 'vitest';
import { agreementsOf } from './agreement.ts';
import { UP_TO_FIVE } from './cases/batches.ts';
import { DAILY_SHIFT, PRINT_IN_20_HOURS } from './cases/calendar-wait.ts';
import { LONE_TECHNICIAN, REPAIRERS } from './cases/interference.ts';
import { PATIENCE_MEAN_2 } from './cases/patience.ts';
import { FIVE_SERVERS } from './cases/several-servers.ts';
import { SINGLE_SERVER } from './cases/single-server.ts';
import { TECHNICIAN_WEEK } from './cases/technician-week.ts';
import { WORK_OUTSIDE } from './cases/work-outside.ts';
import { PATIENCE } from './expect-agreement.ts';
import { play } from './play.ts';
import type { PublishedCase } from './published-case.ts';

/**
 * The scenario of a case with one thing about 5 % wrong; what is replaced has to be there. Fewer replications than the
 * case has are enough, which shows how sharp it is.
 */
function twinOf({ scenario }: PublishedCase, from: string, to: string): string {
  if (!scenario.includes(from)) throw new Error(`The scenario does not say "${from}".`);
  return scenario.replace(from, () => to).replace(/replications: \d+/, 'replications: 40');
}

interface Twin {
  readonly published: PublishedCase;
  readonly from: string;
  readonly to: string;
  readonly notice: readonly string[] | null;
}

/** One twin at least for each kind of measure, and the values that have to notice; null: all of the case. */
const TWINS: readonly Twin[] = [
  { published: SINGLE_SERVER, from: 'mean 1 h', to: 'mean 63 min', notice: null },
  { published: FIVE_SERVERS, from: 'mean 1 h', to: 'mean 63 min', notice: null },
  { published: UP_TO_FIVE, from: 'mean 2 h', to: 'mean 126 min', notice: null },
  { published: TECHNICIAN_WEEK, from: 'mean 1 h', to: 'mean 63 min', notice: null },
  { published: DAILY_SHIFT, from: '08:00-16:00', to: '08:00-15:36', notice: null },
  {
    published: PRINT_IN_20_HOURS,
    from: 'print: 20 h',
    to: 'print: 21 h',
    notice: ['mean wait for unloading, hours', 'mean lead time, hours'],
  },
  { published: PATIENCE_MEAN_2, from: 'mean 1 h', to: 'mean 63 min', notice: null },
  {
    published: LONE_TECHNICIAN,
    from: 'print: exponential mean 10 h',
    to: 'print: exponential mean 10.5 h',
    notice: null,
  },
  {
    published: REPAIRERS,
    from: 'exponential mean 3 h',
    to: 'exponential mean 3.15 h',
    notice: ['machines down', 'machines at work', 'hours down', 'idle repairers'],
  },
  {
    published: WORK_OUTSIDE,
    from: 'mean 4 h',
    to: 'mean 252 min',
    notice: ['L', 'lead time, hours'],
  },
  { published: REPAIRERS, from: 'about 30 h', to: 'about 28.5 h', notice: ['failures per hour'] },
];

describe('A theory test', () => {
  it.each(TWINS)(
    'notices a twin that is 5 % wrong, $to: $published.title',
    async (twin) => {
      const played = await play(twinOf(twin.published, twin.from, twin.to), twin.published.traced);
      const { notice } = twin;
      const values = twin.published.values.filter(({ what }) => notice === null || notice.includes(what));
      expect(values).toHaveLength(notice?.length ?? twin.published.values.length);
      const unnoticed = agreementsOf({ ...twin.published, values }, played).filter((one) => one.agrees);
      expect(unnoticed.map((one) => one.words)).toEqual([]);
    },
    PATIENCE,
  );
});
