import type { Queue, Results } from '@buildweek/results';
import type { ChartSize } from './chart.ts';
import { AT_A_TIME, formatValue, shorten } from './format.ts';
import { fitName, textWidth } from './text-width.ts';
import { FONT_SIZE } from './theme.ts';

/** How many queues are drawn; the rest stands in the table of the page. */
const DRAWN = 6;

/** Queues for one resource, biggest first; the jobs in the lab as a whole are not among them. */
export function rankedQueues(results: Results): Queue[] {
  return results.queues
    .filter((queue) => queue.kind !== 'all')
    .sort((one, other) => other.meanLength.value - one.meanLength.value)
    .slice(0, DRAWN);
}

/** The name of a queue over its small chart: what is waited for, and how many jobs wait on average. */
export function queueTitle(queue: Queue, size: ChartSize, room: number): string {
  const kind = queue.kind === 'people' ? ' (people)' : '';
  const suffix = `${kind}: ${formatValue(queue.meanLength, AT_A_TIME)}`;
  const fontSize = FONT_SIZE[size];
  return `${fitName(queue.name, room - textWidth(suffix, fontSize, true), fontSize, true)}${suffix}`;
}

/** What is waited for, in a sentence. */
export function queueWords(queue: Queue): string {
  const name = `“${shorten(queue.name, 32)}”`;
  switch (queue.kind) {
    case 'machine':
      return `${name} machines`;
    case 'station':
      return `the station ${name}`;
    case 'people':
      return `people who can ${name}`;
    case 'all':
      return name;
  }
}

/** Share of the highest value from which on an hour counts as the peak. */
const PEAK_SHARE = 0.99;

/**
 * The hour of the week at which the curve of a queue is highest; of a plateau, its last hour, after which the
 * queue is worked off.
 */
export function peakHour(queue: Queue): number {
  const { value } = queue.byHourOfWeek;
  const highest = Math.max(...value);
  let hour = value.indexOf(highest);
  const next = (): number => (hour + 1) % value.length;
  for (let step = 1; step < value.length && (value[next()] ?? 0) >= PEAK_SHARE * highest; step++)
    hour = next();
  return hour;
}

/** Says how many queues are drawn when there are more. */
export function drawnWords(results: Results): string {
  const all = results.queues.filter((queue) => queue.kind !== 'all').length;
  return all > DRAWN ? ` The ${DRAWN} longest of ${all} queues are drawn.` : '';
}
