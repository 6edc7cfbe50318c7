import type { ChartSize, HorizontalAxis } from '../chart.ts';
import { HOURS_PER_DAY } from '../format.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const STEPS = [1, 2, 3, 6, 12, 24, 48, 168, 336, 672];
/** Room that the time below a tick needs, CSS pixels. */
const LABEL_ROOM: Readonly<Record<ChartSize, number>> = { wide: 46, narrow: 40 };

/** A tick at a full hour by the clock. */
export interface ClockTick {
  /** Hours since the job was asked for. */
  readonly offset: number;
  readonly time: string;
  /** Name of the day at its first tick, else nothing. */
  readonly day: string;
}

/**
 * Ticks at hours by the clock that divide the day, as close as there is room for.
 *
 * @param askedHour hour of the week at which the job was asked for
 * @param hours length of the axis
 * @param width of the axis, CSS pixels
 * @param size of the chart
 */
export function clockTicks(askedHour: number, hours: number, width: number, size: ChartSize): ClockTick[] {
  const step = STEPS.find((one) => (one / hours) * width >= LABEL_ROOM[size]) ?? (STEPS.at(-1) as number);
  const ticks: ClockTick[] = [];
  let named = -1;
  for (let hour = Math.ceil(askedHour / step) * step; hour - askedHour <= hours; hour += step) {
    const day = Math.floor(hour / HOURS_PER_DAY);
    ticks.push({
      offset: hour - askedHour,
      time: `${String(hour % HOURS_PER_DAY).padStart(2, '0')}:00`,
      day: day === named ? '' : (WEEKDAYS[day % WEEKDAYS.length] ?? ''),
    });
    named = day;
  }
  return ticks;
}

/** An axis of hours since the moment of asking, labelled with the time of the week. */
export function clockAxis(
  askedHour: number,
  hours: number,
  width: number,
  size: ChartSize,
  title: string | null,
): HorizontalAxis {
  const ticks = clockTicks(askedHour, hours, width, size);
  const labels = ticks.map(({ time, day }) => `['${time}','${day}']`).join(',');
  return {
    type: 'quantitative',
    scale: { domain: [0, hours], nice: false },
    axis: {
      title,
      values: ticks.map((tick) => tick.offset),
      labelExpr: `[${labels}][indexof([${ticks.map((tick) => tick.offset).join(',')}], datum.value)]`,
      grid: false,
      labelLineHeight: 14,
    },
  };
}

/** Hours since the moment of asking at which a new day begins. */
export function midnights(askedHour: number, hours: number): number[] {
  const first = (Math.floor(askedHour / HOURS_PER_DAY) + 1) * HOURS_PER_DAY;
  const found: number[] = [];
  for (let hour = first; hour - askedHour < hours; hour += HOURS_PER_DAY) found.push(hour - askedHour);
  return found;
}
