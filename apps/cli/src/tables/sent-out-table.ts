import { formatEstimate, PERCENT, PLAIN } from '@buildweek/charts';
import type { SentOut } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** How much is made outside: all jobs, then each part type that a rule may send out. */
export function sentOutTable(rows: readonly SentOut[], style: Style): string {
  return tableText(
    [
      words('part'),
      numbers('share of jobs sent out'),
      numbers('jobs a week, back'),
      numbers('parts a week, back'),
    ],
    rows.map(({ part, share, jobsPerWeek, partsPerWeek }) => ({
      cells: [
        part ?? 'all jobs',
        share.kind === 'estimate' ? formatEstimate(share, PERCENT) : 'no jobs',
        formatEstimate(jobsPerWeek, PLAIN),
        formatEstimate(partsPerWeek, PLAIN),
      ],
    })),
    style,
  );
}
