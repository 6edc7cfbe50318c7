import type { Queue, Results } from '@buildweek/results';
import type { ChartSize } from './chart.ts';
import { formatPlain } from './format.ts';
import { fitName, textWidth } from './text-width.ts';
import { FONT_SIZE } from './theme.ts';

/** How many queues are drawn; the rest stands in the table of the page. */
const DRAWN = 9;

/** Queues for one resource, biggest first; the jobs in the lab as a whole are not among them. */
export function rankedQueues(results: Results): Queue[] {
  return results.queues
    .filter((queue) => queue.kind !== 'all')
    .sort((one, other) => other.meanLength.value - one.meanLength.value)
    .slice(0, DRAWN);
}

/** The name of a queue over its small chart: what is waited for, and how many on average. */
export function queueTitle(queue: Queue, size: ChartSize, room: number): string {
  const number = `: ${formatPlain(queue.meanLength.value)}`;
  const fontSize = FONT_SIZE[size];
  return `${fitName(queue.name, room - textWidth(number, fontSize, true), fontSize, true)}${number}`;
}

/** The hour of the week at which the curve of a queue is highest. */
export function peakHour(queue: Queue): number {
  const { value } = queue.byHourOfWeek;
  return value.indexOf(Math.max(...value));
}

/** Says how many queues are drawn when there are more. */
export function drawnWords(results: Results): string {
  const all = results.queues.filter((queue) => queue.kind !== 'all').length;
  return all > DRAWN ? ` The ${DRAWN} longest of ${all} queues are drawn.` : '';
}
