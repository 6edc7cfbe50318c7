import type { LearnedBlock } from '@buildweek/results';
import { type BandRow, bandLayers } from '../band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize } from '../chart.ts';
import { formatHourOfWeek, formatLevel, formatPlain, HOURS_PER_WEEK } from '../format.ts';
import { themeFor } from '../theme.ts';
import { hourOfWeekAxis, midnightLayer } from '../time-axes.ts';

interface HourRate {
  readonly fromHour: number;
  readonly toHour: number;
  readonly perHour: LearnedBlock['perHour'];
}

/** When in the week jobs are asked for, as a step in its interval. */
export function arrivalsByHour(blocks: readonly LearnedBlock[], level: number, size: ChartSize): Chart {
  const ascending = blocks
    .flatMap(({ spans, perHour }): HourRate[] => spans.map((span) => ({ ...span, perHour })))
    .sort((a, b) => a.fromHour - b.fromHour);
  const busiest = ascending.reduce<HourRate | null>(
    (best, rate) => (best === null || rate.perHour.value > best.perHour.value ? rate : best),
    null,
  );
  return {
    id: 'arrivals-by-hour',
    title:
      busiest === null
        ? 'No job tells the hour at which it was asked for'
        : `Most jobs are asked for on ${formatHourOfWeek(busiest.fromHour)}: ${formatPlain(busiest.perHour.value)} an hour`,
    description: blocks
      .map(
        ({ name, jobs, perHour }) =>
          `${name}: ${jobs} jobs, ${formatPlain(perHour.value)} an hour (${formatPlain(perHour.low)} to ${formatPlain(perHour.high)}).`,
      )
      .join(' '),
    spec: {
      config: themeFor(size),
      width: CHART_WIDTH[size] - 70,
      height: size === 'wide' ? 190 : 150,
      layer: [midnightLayer(), ...bandLayers(stepsOf(ascending), true)],
      encoding: {
        x: hourOfWeekAxis(size),
        y: { type: 'quantitative', axis: { title: 'jobs per hour', tickCount: 4 }, scale: { zero: true } },
      },
    },
    footnote: `Line: jobs asked for in an hour; blocks of few jobs are drawn towards the others. Shaded: ${formatLevel(level)} intervals of the rate.`,
  };
}

/** Each value holds up to the next point; stretches without a rate are zero. */
function stepsOf(rates: readonly HourRate[]): BandRow[] {
  const rows: BandRow[] = [];
  let at = 0;
  for (const { fromHour, toHour, perHour } of rates) {
    if (fromHour > at) rows.push({ x: at, value: 0, low: 0, high: 0 });
    rows.push({ x: fromHour, ...perHour });
    at = toHour;
  }
  if (at < HOURS_PER_WEEK) rows.push({ x: at, value: 0, low: 0, high: 0 });
  const last = rows.at(-1);
  return last === undefined ? [] : [...rows, { ...last, x: HOURS_PER_WEEK }];
}
