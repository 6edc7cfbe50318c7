import type { Results } from '@buildweek/results';
import type { ChartSize, HorizontalAxis, Layer } from './chart.ts';
import { HOURS_PER_WEEK } from './format.ts';
import { CLOSED_HOURS } from './palette.ts';
import { dateOfWeek } from './week-dates.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** Week 1 and then every so many weeks, at most as many as there is room for. */
function weekTicks(weeks: number, room: number): number[] {
  const step = Math.max(1, Math.ceil((weeks - 1) / room));
  return Array.from({ length: Math.floor((weeks - 1) / step) + 1 }, (_, index) => 1 + index * step);
}

/** What has to be known of the weeks. */
export interface MeasuredWeeks {
  readonly lab: Pick<Results['lab'], 'startDate'>;
  readonly run: Pick<Results['run'], 'weeks'>;
}

/**
 * What stands below a tick of week n: the number of the week and its first day. The expression holds nothing from a
 * scenario but numbers and names of months.
 */
function weekLabels({ lab, run }: MeasuredWeeks, size: ChartSize): string {
  const labels = Array.from({ length: run.weeks }, (_, index) => {
    const name = size === 'wide' ? `week ${index + 1}` : String(index + 1);
    const date = dateOfWeek(lab.startDate, index + 1);
    return `['${name}','${date === null ? '' : date.short}']`;
  });
  return `[${labels.join(',')}][datum.value - 1]`;
}

/**
 * The horizontal axis of a chart over the measured weeks.
 *
 * @param titled whether it says what it is
 * @param weeks what the weeks are called
 */
export function weekAxis(
  results: MeasuredWeeks,
  size: ChartSize,
  titled = true,
  weeks = 'measured week',
): HorizontalAxis {
  const { run } = results;
  return {
    type: 'quantitative',
    axis: {
      title: titled ? `${weeks} and its first day` : null,
      values: weekTicks(run.weeks, size === 'wide' ? 13 : 4),
      labelExpr: weekLabels(results, size),
      grid: false,
    },
    scale: { domain: [1, Math.max(2, run.weeks)], nice: false },
  };
}

/** The horizontal axis of a chart over the hours of the week: names of days at noon, lines at midnight. */
export function hourOfWeekAxis(size: ChartSize, titled = true): HorizontalAxis {
  const noon = WEEKDAYS.map((_, day) => day * 24 + 12);
  const names = size === 'wide' ? WEEKDAYS : WEEKDAYS.map((name) => name.slice(0, 2));
  return {
    type: 'quantitative',
    axis: {
      title: titled ? 'hour of the week, local time' : null,
      values: noon,
      labelExpr: `[${names.map((name) => `'${name}'`).join(',')}][floor(datum.value / 24)]`,
      ticks: false,
      grid: false,
    },
    scale: { domain: [0, HOURS_PER_WEEK], nice: false },
  };
}

/** Lines between the days of the week. */
export function midnightLayer(): Layer {
  return {
    data: { values: [1, 2, 3, 4, 5, 6].map((day) => ({ x: day * 24 })) },
    mark: { type: 'rule', color: '#c9c5bb', strokeWidth: 1 },
    encoding: { x: { field: 'x', type: 'quantitative' } },
  };
}

/** Stretches of the week, in hours, in which nobody is on duty. */
export function closedSpans(results: Results): { from: number; to: number }[] {
  const spans: { from: number; to: number }[] = [];
  for (let hour = 0; hour < HOURS_PER_WEEK; hour++) {
    if (results.people.some((group) => (group.onDutyByHourOfWeek[hour] ?? 0) > 0)) continue;
    const last = spans.at(-1);
    if (last !== undefined && last.to === hour) last.to = hour + 1;
    else spans.push({ from: hour, to: hour + 1 });
  }
  return spans;
}

/** A ground for the hours in which nobody is there; none in a lab that runs without people. */
export function closedLayers(results: Results): Layer[] {
  if (results.people.length === 0) return [];
  return [
    {
      data: { values: closedSpans(results) },
      mark: { type: 'rect', color: CLOSED_HOURS, opacity: 1 },
      encoding: { x: { field: 'from', type: 'quantitative' }, x2: { field: 'to' } },
    },
  ];
}
