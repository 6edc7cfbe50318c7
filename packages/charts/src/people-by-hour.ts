import type { PeopleUse, Results } from '@buildweek/results';
import { bandLayers, bandRows } from './band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize, type LayeredSpec } from './chart.ts';
import { formatHourOfWeek, formatPlain, formatShare, HOURS_PER_WEEK, shorten } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { MUTED_INK } from './palette.ts';
import { fitName } from './text-width.ts';
import { FONT_SIZE, themeFor } from './theme.ts';
import { hourOfWeekAxis, midnightLayer } from './time-axes.ts';

/** Persons on duty below this are rounding, not a shift. */
const SOMEBODY = 0.05;

interface Peak {
  readonly hour: number;
  readonly busy: number;
  readonly onDuty: number;
}

/** The hour of the week in which the largest share of those on duty is busy; null when nobody is ever there. */
function tightestHour(group: PeopleUse): Peak | null {
  let tightest: Peak | null = null;
  group.onDutyByHourOfWeek.forEach((onDuty, hour) => {
    if (onDuty < SOMEBODY) return;
    const busy = group.busyByHourOfWeek.value[hour] ?? 0;
    if (tightest === null || busy / onDuty > tightest.busy / tightest.onDuty)
      tightest = { hour, busy, onDuty };
  });
  return tightest;
}

function panel(size: ChartSize, group: PeopleUse): LayeredSpec {
  const onDuty = [...group.onDutyByHourOfWeek, group.onDutyByHourOfWeek.at(-1) ?? 0].map((persons, hour) => ({
    x: hour,
    persons,
  }));
  const rows = bandRows(group.busyByHourOfWeek, (hour) => hour);
  const closing = rows.at(-1);
  const busy = closing === undefined ? rows : [...rows, { ...closing, x: HOURS_PER_WEEK }];
  const top = Math.max(1, ...group.onDutyByHourOfWeek, ...group.busyByHourOfWeek.high);
  return {
    title: fitName(group.group, CHART_WIDTH[size] - 80, FONT_SIZE[size], true),
    width: CHART_WIDTH[size] - 64,
    height: size === 'wide' ? 120 : 90,
    layer: [
      {
        data: { values: onDuty },
        mark: {
          type: 'area',
          interpolate: 'step-after',
          color: '#e6e3db',
          line: { color: MUTED_INK, strokeWidth: 1 },
        },
        encoding: { x: { field: 'x', type: 'quantitative' }, y: { field: 'persons', type: 'quantitative' } },
      },
      midnightLayer(),
      ...bandLayers(busy, true),
    ],
    encoding: {
      x: hourOfWeekAxis(size),
      y: {
        type: 'quantitative',
        axis: { title: 'persons', tickMinStep: 1, tickCount: 4 },
        scale: { domain: [0, top * 1.05] },
      },
    },
  };
}

/** Busy persons against persons on duty over the hours of the week, one chart for each group. */
export function peopleByHour(results: Results, size: ChartSize): Chart {
  const peaks = results.people.flatMap((group) => {
    const peak = tightestHour(group);
    return peak === null ? [] : [{ name: group.group, ...peak }];
  });
  const [tightest] = [...peaks].sort((one, other) => other.busy / other.onDuty - one.busy / one.onDuty);
  return {
    id: 'people-by-hour',
    title:
      tightest === undefined
        ? 'Nobody is on duty'
        : `Hands are shortest on ${formatHourOfWeek(tightest.hour)}: ${shorten(tightest.name, 32)}, ` +
          `${formatShare(tightest.busy / tightest.onDuty)} busy`,
    description: `Persons busy and on duty over the hours of an average week. ${peaks
      .map(
        (peak) =>
          `${peak.name}: busiest on ${formatHourOfWeek(peak.hour)}, ${formatPlain(peak.busy)} of ${formatPlain(peak.onDuty)} persons busy.`,
      )
      .join(' ')}`,
    spec: { config: themeFor(size), vconcat: results.people.map((group) => panel(size, group)) },
    footnote:
      'Grey: persons on duty. Line: persons busy, other duties and overtime included. ' +
      `Shaded: ${intervalWords(results.run)}. The gap between line and grey is free time.`,
  };
}
