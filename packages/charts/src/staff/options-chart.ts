import type { Estimate, StaffAnswer, StaffPlan } from '@buildweek/results';
import { signedText, writtenUnit } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { formatLevel } from '../format.ts';
import { INK, LINE, MUTED_INK, SECOND_LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 30, narrow: 46 };
/** Room for the names of options, which are long, CSS pixels. */
const NAME_ROOM: Readonly<Record<ChartSize, number>> = { wide: 290, narrow: 320 };
const HOURS = [
  ['the same', 'the same hours', 'circle', LINE],
  ['more', 'more hours', 'triangle-up', SECOND_LINE],
  ['fewer', 'fewer hours', 'triangle-down', MUTED_INK],
] as const;
/** How far to the bad side is drawn, for each unit that the best gains. */
const BAD_SIDE = 1.6;

interface OptionRow {
  readonly plan: StaffPlan;
  readonly difference: Estimate;
}

function rowsOf({ plans }: StaffAnswer, deciding: number): OptionRow[] {
  return plans.slice(1).flatMap((plan): OptionRow[] => {
    const difference = plan.differences[deciding]?.difference;
    return difference?.kind === 'estimate' ? [{ plan, difference }] : [];
  });
}

/**
 * What each option changes in the measure that decides, with its interval, best first.
 *
 * @returns null when nothing can be drawn
 */
export function optionsChart(answer: StaffAnswer, size: ChartSize): Chart | null {
  const deciding = answer.plans[0]?.measures.findIndex(({ name }) => name === answer.decidedBy) ?? -1;
  const measure = answer.plans[0]?.measures[deciding];
  if (measure === undefined) return null;
  const sign = measure.better === 'higher' ? -1 : 1;
  const rows = rowsOf(answer, deciding).sort(
    (one, other) => sign * (one.difference.value - other.difference.value),
  );
  if (rows.length === 0) return null;
  const unit = writtenUnit(
    measure.unit,
    rows.map(({ difference }) => difference.value),
    answer.currency,
  );
  const named = measure.unit === 'share' ? { ...unit, one: 'points', many: 'points' } : unit;
  const words = rows.map(({ difference }) => signedText(difference, named));
  const [low, high] = reachOf(rows, sign).map((end) => end / unit.size) as [number, number];
  const names = rows.map(({ plan }) => ({ name: plan.name, strong: plan.name === answer.best?.name }));
  const ends = { title: `change, ${named.many}`, words: size === 'wide' ? words : [] };
  const width = plotWidth(names, ends, size, NAME_ROOM[size]);
  return {
    id: 'staff-options',
    title: `What each option changes: ${measure.name}`,
    description: rows
      .map(({ plan }, row) => `${plan.name} (${plan.hoursAgainstToday} hours): ${words[row]} ${named.many}.`)
      .join(' '),
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * rows.length,
      layer: [
        ...marks(rows, unit.size, low, high),
        ...rowNames(names, size, 10, NAME_ROOM[size]),
        ...rowEnds(ends, width, size),
      ],
      encoding: {
        x: {
          type: 'quantitative',
          scale: { domain: [low, high], nice: false },
          axis: {
            title: `change against today, ${named.many}`,
            labelExpr: "datum.value === 0 ? '0' : format(datum.value, '+')",
            tickCount: size === 'wide' ? 8 : 4,
          },
        },
        y: rowAxis(rows.length),
      },
    },
    footnote: `Marks: changes on the same random numbers, in ${answer.run.replications} replications. Lines: their intervals, each ${formatLevel(answer.differencesLevel)}, so that all of them hold at once with ${formatLevel(answer.run.level)} confidence. A line that crosses the zero line is not told apart from today. An arrow: it lies beyond the edge.`,
  };
}

/** Ends of the axis in base units: all that is gained, and of what is lost as much as leaves the gains readable. */
function reachOf(rows: readonly OptionRow[], sign: number): [number, number] {
  const gains = Math.max(0, ...rows.map(({ difference }) => -(sign > 0 ? difference.low : -difference.high)));
  const losses = rows.map(({ difference }) => (sign > 0 ? difference.high : -difference.low));
  const smallest = Math.max(0, Math.min(...losses));
  const most = Math.max(...losses, 0);
  const loss = Math.min(most, Math.max(BAD_SIDE * gains, smallest));
  const room = 0.04 * (gains + loss) || 1;
  return sign > 0 ? [-gains - room, loss + room] : [-loss - room, gains + room];
}

function marks(rows: readonly OptionRow[], unitSize: number, least: number, most: number): Layer[] {
  const inside = (value: number): number => Math.min(most, Math.max(least, value));
  const values = rows.map(({ plan, difference }, row) => ({
    row,
    value: difference.value / unitSize,
    low: inside(difference.low / unitSize),
    high: inside(difference.high / unitSize),
    hours: HOURS.find(([kind]) => kind === plan.hoursAgainstToday)?.[1] ?? '',
  }));
  const isBeyond = ({ value }: { value: number }): boolean => value < least || value > most;
  const present = HOURS.filter(([, name]) => values.some(({ hours }) => hours === name));
  const domain = present.map(([, name]) => name);
  const legend = { title: null, orient: 'top' as const };
  return [
    {
      data: { values: [{ none: 0 }] },
      mark: { type: 'rule', color: MUTED_INK, strokeWidth: 1.5 },
      encoding: { x: { field: 'none', type: 'quantitative' } },
    },
    {
      data: { values: values.filter((value) => !isBeyond(value)) },
      mark: { type: 'rule', color: INK, strokeWidth: 1.8 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values: values.filter((value) => !isBeyond(value)) },
      mark: { type: 'point', filled: true, size: 110, opacity: 1, stroke: INK, strokeWidth: 1 },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        y: ROW,
        fill: {
          field: 'hours',
          type: 'nominal',
          scale: { domain, range: present.map(([, , , colour]) => colour) },
          legend,
        },
        shape: {
          field: 'hours',
          type: 'nominal',
          scale: { domain, range: present.map(([, , shape]) => shape) },
          legend,
        },
      },
    },
    ...([1, -1] as const).map(
      (side): Layer => ({
        data: {
          values: values
            .filter(({ value }) => (side > 0 ? value > most : value < least))
            .map(({ row }) => ({ row, edge: side > 0 ? most : least })),
        },
        mark: {
          type: 'point',
          shape: side > 0 ? 'triangle-right' : 'triangle-left',
          filled: true,
          size: 120,
          color: INK,
          opacity: 1,
        },
        encoding: { x: { field: 'edge', type: 'quantitative' }, y: ROW },
      }),
    ),
  ];
}
