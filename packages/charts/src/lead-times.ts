import { figureOf, type JobClass, type Percentile, periodName, type Results } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from './chart.ts';
import { formatEstimate, formatOrReason, isolate, shareInWords, type Unit } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { leadTimeUnit } from './lead-time-unit.ts';
import { BAND, INK, LINE, MUTED_INK, type ProcessName } from './palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames, rowProcesses } from './row-axis.ts';
import { themeFor } from './theme.ts';

/** The two percentiles that are drawn; the others stand in the table of the page. */
const DRAWN = [0.5, 0.9] as const;
const MIDDLE = 'half are finished';
const NINE_OF_TEN = 'nine of ten are finished';
const HALF_FILL = '#e3d9c3';
const BOX_HEIGHT = 8;
/** Half the distance of the two lanes of a row, CSS pixels. */
const LANE = 4.5;
const STEP: Readonly<Record<ChartSize, number>> = { wide: 28, narrow: 46 };

/** One line of the chart: a class of jobs and one percentile, in the unit of the chart. */
interface MarkRow {
  readonly row: number;
  readonly which: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly periodLow: number | null;
  readonly periodHigh: number | null;
}

interface ClassRow {
  readonly name: string;
  readonly suffix: string;
  readonly strong: boolean;
  readonly words: string;
}

function percentileOf(one: JobClass, share: number): Percentile | undefined {
  return one.percentiles.find((candidate) => candidate.share === share);
}

/** All jobs first, then each part type, normal and rush; a class without jobs is left out. */
function drawnClasses(results: Results): JobClass[] {
  return results.jobs.filter((one) => {
    if (one.jobs === 0) return false;
    if (one.part === null) return true;
    const rush = results.jobs.find((other) => other.part === one.part && other.priority === 'rush');
    const hasRush = rush !== undefined && rush.jobs > 0;
    return hasRush ? one.priority !== 'all' : one.priority === 'all';
  });
}

function nameOf(one: JobClass): string {
  if (one.part === null) return one.priority === 'all' ? 'All jobs' : `All ${one.priority} jobs`;
  const part = isolate(one.part);
  return one.priority === 'all' ? part : `${part}, ${one.priority}`;
}

function classRow(one: JobClass, unit: Unit): ClassRow {
  const nine = percentileOf(one, 0.9)?.longRun;
  const words =
    nine === undefined || nine.kind === 'refused'
      ? 'not given'
      : nine.kind === 'never'
        ? 'never'
        : `${figureOf(nine, unit.size, unit.leastDecimals).value} ${unit.one.charAt(0)}`;
  const suffix = one.part === null || one.priority === 'all' ? '' : `, ${one.priority}`;
  return { name: one.part ?? nameOf(one), suffix, strong: one.part === null, words };
}

function markRows(classes: readonly JobClass[], unit: Unit): MarkRow[] {
  return classes.flatMap((one, row) =>
    DRAWN.flatMap((share): MarkRow[] => {
      const percentile = percentileOf(one, share);
      if (percentile === undefined || percentile.longRun.kind !== 'estimate') return [];
      const { longRun, onePeriod } = percentile;
      const period = onePeriod.kind === 'prediction' ? onePeriod : null;
      return [
        {
          row,
          which: share === 0.5 ? MIDDLE : NINE_OF_TEN,
          value: longRun.value / unit.size,
          low: longRun.low / unit.size,
          high: longRun.high / unit.size,
          periodLow: period === null ? null : period.low / unit.size,
          periodHigh: period === null ? null : period.high / unit.size,
        },
      ];
    }),
  );
}

/** The marks of one percentile; the two stand in lanes of their own, so that their lines never cover each other. */
function laneLayers(marks: readonly MarkRow[], yOffset: number): Layer[] {
  const withPeriod = marks.filter((mark) => mark.periodLow !== null);
  return [
    {
      data: { values: withPeriod },
      mark: { type: 'rule', color: MUTED_INK, strokeWidth: 1.2, yOffset },
      encoding: {
        x: { field: 'periodLow', type: 'quantitative' },
        x2: { field: 'periodHigh' },
        y: ROW,
      },
    },
    ...(['periodLow', 'periodHigh'] as const).map(
      (field): Layer => ({
        data: { values: withPeriod },
        mark: { type: 'tick', orient: 'vertical', color: MUTED_INK, thickness: 1.2, size: 7, yOffset },
        encoding: { x: { field, type: 'quantitative' }, y: ROW },
      }),
    ),
    {
      data: { values: [...marks] },
      mark: { type: 'bar', height: BOX_HEIGHT, color: BAND, stroke: LINE, strokeWidth: 0.8, yOffset },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values: [...marks] },
      mark: { type: 'point', filled: true, size: 62, opacity: 1, stroke: INK, strokeWidth: 1.3, yOffset },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        y: ROW,
        shape: {
          field: 'which',
          type: 'nominal',
          scale: { domain: [MIDDLE, NINE_OF_TEN], range: ['circle', 'diamond'] },
          legend: { title: null, orient: 'top' },
        },
        fill: {
          field: 'which',
          type: 'nominal',
          scale: { domain: [MIDDLE, NINE_OF_TEN], range: [HALF_FILL, INK] },
          legend: { title: null, orient: 'top' },
        },
      },
    },
  ];
}

function markLayers(marks: readonly MarkRow[]): Layer[] {
  return [MIDDLE, NINE_OF_TEN].flatMap((which) =>
    laneLayers(
      marks.filter((mark) => mark.which === which),
      which === MIDDLE ? -LANE : LANE,
    ),
  );
}

function processOf(results: Results, one: JobClass): ProcessName | null {
  return results.hours.find((part) => part.part === one.part)?.process ?? null;
}

function titleOf(results: Results, unit: Unit): string {
  const all = results.jobs.find((one) => one.part === null && one.priority === 'all');
  const nine = all === undefined ? undefined : percentileOf(all, 0.9)?.longRun;
  if (nine?.kind === 'estimate') {
    return `${shareInWords(0.9)} jobs are finished within ${formatEstimate(nine, unit)}`;
  }
  if (nine?.kind === 'never') return 'More than one job in ten is not finished by the end of the plan';
  return 'How long jobs take from the complete file to the last good part';
}

function describe(classes: readonly JobClass[], unit: Unit, period: string): string {
  return classes
    .map((one) => {
      const shares = DRAWN.map((share) => {
        const percentile = percentileOf(one, share);
        if (percentile === undefined) return '';
        const long = formatOrReason(percentile.longRun, unit);
        const range =
          percentile.onePeriod.kind === 'prediction'
            ? `, in one ${period} ${formatOrReason(percentile.onePeriod, unit)}`
            : '';
        return `${shareInWords(share).toLowerCase()} within ${long}${range}`;
      });
      return `${nameOf(one)}: ${shares.filter((words) => words !== '').join('; ')}.`;
    })
    .join(' ');
}

/** Lead-time percentiles by part type and priority, for the long run and for one period. */
export function leadTimes(results: Results, size: ChartSize): Chart {
  const unit = leadTimeUnit(results);
  const classes = drawnClasses(results);
  const rows = classes.map((one) => classRow(one, unit));
  const marks = markRows(classes, unit);
  const top = Math.max(1, ...marks.map((mark) => Math.max(mark.high, mark.periodHigh ?? 0))) * 1.03;
  const ends = { title: '9 of 10', words: rows.map((one) => one.words) };
  const width = plotWidth(rows, ends, size);
  return {
    id: 'lead-times',
    title: titleOf(results, unit),
    description: `Lead times in ${unit.many} by the clock (a day has 24 hours). ${describe(classes, unit, periodName(results.run.weeks))}`,
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * rows.length,
      layer: [
        ...markLayers(marks),
        ...rowNames(rows, size, 10),
        ...rowProcesses(classes.map((one) => processOf(results, one))),
        ...rowEnds(ends, width, size),
      ],
      encoding: {
        x: {
          type: 'quantitative',
          scale: { domain: [0, top], nice: false },
          axis: {
            title: `${unit.many} from complete file to last good part${unit.size === 1 ? '' : ' (24 h by the clock)'}`,
            tickCount: size === 'wide' ? 10 : 5,
          },
        },
        y: rowAxis(rows.length),
      },
    },
    footnote:
      `Box: ${intervalWords(results.run)}. Thin line: what one ${periodName(results.run.weeks)} may bring. ` +
      `On the right: the ${unit.many} within which nine of ten are finished. Nights, weekends and breaks count.`,
  };
}
