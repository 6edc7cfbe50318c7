import type { HeldWeeks, ReplayAnswer } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from '../chart.ts';
import { formatPlain, type Unit } from '../format.ts';
import { BAND, OUTER_BAND } from '../palette.ts';
import { themeFor } from '../theme.ts';
import { weekAxis } from '../time-axes.ts';
import { EXPECTED, HAPPENED, namedLine } from './band-legend.ts';
import { replayUnit } from './replay-unit.ts';

/** What a curve is called on its axis. */
function axisTitle(measure: HeldWeeks['measure'], unit: Unit, size: ChartSize): string {
  if (measure === 'finished jobs') return 'jobs finished';
  if (measure === 'jobs in the lab') return 'jobs in the lab';
  return size === 'wide' ? `lead time, ${unit.many}` : unit.many;
}

type WeekRow = Record<'at' | 'observed' | 'expected' | 'low' | 'high' | 'usualLow' | 'usualHigh', number>;

function rowsOf({ measure, weeks }: HeldWeeks, unit: Unit): WeekRow[] {
  const size = measure === 'lead time' ? unit.size : 1;
  return weeks.map(({ week, observed, expected, low, high, usualLow, usualHigh }) => ({
    at: week,
    observed: observed / size,
    expected: expected / size,
    low: low / size,
    high: high / size,
    usualLow: (usualLow ?? low) / size,
    usualHigh: (usualHigh ?? high) / size,
  }));
}

function band(rows: readonly WeekRow[], low: keyof WeekRow, high: keyof WeekRow, color: string): Layer {
  return {
    data: { values: [...rows] },
    mark: { type: 'area', color, opacity: 1 },
    encoding: {
      x: { field: 'at', type: 'quantitative' },
      y: { field: low, type: 'quantitative' },
      y2: { field: high },
    },
  };
}

function panel(
  answer: ReplayAnswer,
  series: HeldWeeks,
  unit: Unit,
  size: ChartSize,
  place: { readonly isFirst: boolean; readonly isLast: boolean },
): LayeredSpec {
  const rows = rowsOf(series, unit);
  const top = Math.max(1e-9, ...rows.flatMap(({ observed, high }) => [observed, high]));
  const { judged } = answer;
  return {
    width: CHART_WIDTH[size] - (size === 'wide' ? 80 : 64),
    height: size === 'wide' ? 150 : 130,
    layer: [
      band(rows, 'low', 'high', OUTER_BAND),
      ...(series.part === null ? [band(rows, 'usualLow', 'usualHigh', BAND)] : []),
      ...namedLine(rows, 'expected', EXPECTED, place.isFirst),
      ...namedLine(rows, 'observed', HAPPENED, place.isFirst),
    ],
    encoding: {
      x: weekAxis(
        { lab: { startDate: judged.from }, run: { weeks: judged.weeks } },
        size,
        place.isLast,
        'judged week',
      ),
      y: {
        type: 'quantitative',
        axis: { title: axisTitle(series.measure, unit, size), tickCount: 4 },
        scale: { domain: [0, 1.05 * top], nice: false },
      },
    },
  };
}

function describe({ measure, weeks }: HeldWeeks, unit: Unit): string {
  const size = measure === 'lead time' ? unit.size : 1;
  const said = weeks.map(
    ({ week, observed, low, high }) =>
      `week ${week} ${formatPlain(observed / size)} (band ${formatPlain(low / size)} to ${formatPlain(high / size)})`,
  );
  return `${axisTitle(measure, unit, 'wide')}: ${said.join(', ')}.`;
}

/** Jobs finished, jobs in the lab and lead times, week by week: what happened in the bands of the model. */
export function replayWeeks(answer: ReplayAnswer, size: ChartSize): Chart {
  const unit = replayUnit(answer);
  const all = answer.series.filter(({ part }) => part === null);
  const { weeks, of, low, high, usual } = answer.weeksWithin;
  return {
    id: 'replay-weeks',
    title: `As usual in ${weeks} of ${of} weeks; ${low === high ? low : `${low} to ${high}`} are to be expected of a model that is right`,
    description: all.map((series) => describe(series, unit)).join(' '),
    spec: {
      config: themeFor(size),
      vconcat: all.map((series, index) =>
        panel(answer, series, unit, size, { isFirst: index === 0, isLast: index === all.length - 1 }),
      ),
      // One legend, on top of the first panel.
      resolve: { scale: { color: 'independent' } },
    },
    footnote: `Light band: the whole history of a model that is right leaves it, anywhere in this check, in at most ${formatPlain(100 * answer.test.falseAlarmRate)} of 100 uses. Dark band: usual in that week alone; ${formatPlain(100 * usual)} % of the weeks of the model are as usual in all three. Lead times stand at the week in which jobs came.`,
  };
}

/** The same of one part. */
export function replayPartWeeks(
  answer: ReplayAnswer,
  part: string,
  position: number,
  size: ChartSize,
): Chart {
  const unit = replayUnit(answer);
  const own = answer.series.filter((series) => series.part === part);
  return {
    id: `replay-part-${position + 1}`,
    title: `Jobs of “${part}”, week by week`,
    description: own.map((series) => describe(series, unit)).join(' '),
    spec: {
      config: themeFor(size),
      vconcat: own.map((series, index) =>
        panel(answer, series, unit, size, { isFirst: index === 0, isLast: index === own.length - 1 }),
      ),
      resolve: { scale: { color: 'independent' } },
    },
    footnote: 'Band: as the light one above.',
  };
}
