import { formatEstimate, HOURS, PLAIN, unnamed } from '@buildweek/charts';
import type { Queue } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

const WAITED_FOR: Readonly<Record<Queue['kind'], string>> = {
  machine: 'a machine',
  station: 'a station',
  people: 'people',
  all: '(all jobs)',
};

/** Queues, longest first. */
export function queueTable(queues: readonly Queue[], style: Style): string {
  const longestFirst = [...queues].sort((one, other) => other.meanLength.value - one.meanLength.value);
  return tableText(
    [
      words('queue'),
      words('waits for'),
      numbers('jobs in it on average'),
      numbers('wait of a job in it, hours'),
    ],
    longestFirst.map((queue) => ({
      cells: [
        queue.name,
        WAITED_FOR[queue.kind],
        formatEstimate(queue.meanLength, PLAIN),
        queue.meanWait.kind === 'estimate'
          ? formatEstimate(queue.meanWait, unnamed(HOURS))
          : 'nobody came through',
      ],
    })),
    style,
  );
}
