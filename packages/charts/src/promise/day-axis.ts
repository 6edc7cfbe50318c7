import { dayText } from '@buildweek/results';
import type { ChartSize, HorizontalAxis } from '../chart.ts';
import { GRID } from '../palette.ts';

const HOUR = 3_600_000;
const DAY_HOURS = 24;
/** Room that the name of a day needs, CSS pixels. */
const LABEL_ROOM: Readonly<Record<ChartSize, number>> = { wide: 74, narrow: 62 };
const STEPS = [1, 2, 7, 14, 28];

/** A midnight on the axis. */
export interface DayTick {
  /** Hours from now, by the wall clock; a change of the clock moves later days by an hour, which no eye sees. */
  readonly hours: number;
  /** `Tue 2 Mar`. */
  readonly label: string;
}

/**
 * Midnights from now on, as close as there is room for their names.
 *
 * @param now `2027-03-01 09:30`
 * @param hours length of the axis
 * @param width of the axis, CSS pixels
 */
export function dayTicks(now: string, hours: number, width: number, size: ChartSize): DayTick[] {
  const step =
    STEPS.find((days) => (days * DAY_HOURS * width) / hours >= LABEL_ROOM[size]) ?? (STEPS.at(-1) as number);
  const start = Date.parse(`${now.replace(' ', 'T')}Z`);
  const first = Math.ceil(start / (DAY_HOURS * HOUR)) * DAY_HOURS * HOUR;
  const ticks: DayTick[] = [];
  for (let time = first; time - start <= hours * HOUR; time += step * DAY_HOURS * HOUR) {
    const [weekday = '', day = '', month = ''] = dayText(
      `${new Date(time).toISOString().slice(0, 10)} 00:00`,
    ).split(' ');
    ticks.push({ hours: (time - start) / HOUR, label: `${weekday.slice(0, 3)} ${day} ${month.slice(0, 3)}` });
  }
  return ticks;
}

/** An axis of hours from now, with the names of the days at their midnights. */
export function dayAxis(now: string, hours: number, width: number, size: ChartSize): HorizontalAxis {
  const ticks = dayTicks(now, hours, width, size);
  const values = ticks.map((tick) => tick.hours);
  return {
    type: 'quantitative',
    scale: { domain: [0, hours], nice: false },
    axis: {
      title: 'date, at midnight',
      values,
      labelExpr: `[${ticks.map(({ label }) => `'${label}'`).join(',')}][indexof([${values.join(',')}], datum.value)]`,
      grid: true,
      gridColor: GRID,
    },
  };
}
