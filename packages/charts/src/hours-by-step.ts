import type { PartHours, Results, StepHours } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type LayeredSpec } from './chart.ts';
import { formatPlain, shorten } from './format.ts';
import { gatherHours, outerInterval, partsWithHours } from './hour-families.ts';
import { intervalWords } from './interval-words.ts';
import { GRID, INK, LINE, MUTED_INK, PAPER } from './palette.ts';
import { ROW, rowAxis, rowNames } from './row-axis.ts';
import { fitName } from './text-width.ts';
import { FONT_SIZE, themeFor } from './theme.ts';

const COLUMNS: Readonly<Record<ChartSize, number>> = { wide: 2, narrow: 1 };
const NAME_ROOM: Readonly<Record<ChartSize, number>> = { wide: 150, narrow: 132 };
const STEP = 21;
const BAR = 14;
const WORK = 'work goes on';
const WAIT = 'the job waits before it';

/** A step of a route in words: "build: print", or the stage alone where it is its only phase. */
export function stepName(step: Pick<StepHours, 'stage' | 'phase'>): string {
  if (step.phase === 'outside') return 'made outside';
  return step.phase === 'work' || step.phase === 'wait' || step.phase === 'run'
    ? step.stage
    : `${step.stage}: ${step.phase}`;
}

interface StepRow {
  readonly row: number;
  readonly kind: string;
  readonly start: number;
  readonly end: number;
}

function waitHours(step: StepHours): number {
  return step.waits.reduce((sum, wait) => sum + wait.hours.value, 0);
}

function panel(part: PartHours, size: ChartSize, top: number, columns: number): LayeredSpec {
  const width = Math.floor(CHART_WIDTH[size] / columns) - NAME_ROOM[size] - 22;
  const rows: StepRow[] = part.steps.flatMap((step, row) => {
    const wait = waitHours(step);
    return [
      { row, kind: WAIT, start: 0, end: wait },
      { row, kind: WORK, start: wait, end: wait + step.work.value },
    ];
  });
  const whiskers = part.steps.map((step, row) => ({ row, ...outerInterval([step]) }));
  return {
    title: fitName(part.part, width, FONT_SIZE[size], true),
    width,
    height: STEP * part.steps.length,
    layer: [
      {
        data: { values: rows },
        mark: { type: 'bar', height: BAR, stroke: PAPER, strokeWidth: 0.8 },
        encoding: {
          x: {
            field: 'start',
            type: 'quantitative',
            scale: { domain: [0, top], nice: false },
            axis: { title: 'hours per job', tickCount: 5, gridColor: GRID, domain: false, ticks: false },
          },
          x2: { field: 'end' },
          y: ROW,
          color: {
            field: 'kind',
            type: 'nominal',
            scale: { domain: [WAIT, WORK], range: ['#f0a860', LINE] },
            legend: {
              title: null,
              orient: 'top',
              symbolType: 'square',
              columns: size === 'wide' ? 2 : 1,
              symbolStrokeColor: MUTED_INK,
            },
          },
        },
      },
      {
        data: { values: whiskers },
        mark: { type: 'rule', color: INK, strokeWidth: 1.4 },
        encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
      },
      ...rowNames(
        part.steps.map((step) => ({ name: stepName(step) })),
        'wide',
        0,
        NAME_ROOM[size] - 12,
      ),
    ],
    encoding: { y: rowAxis(part.steps.length) },
  };
}

/** The step that is waited for longest, over all parts. */
function longestWait(parts: readonly PartHours[]) {
  const all = parts.flatMap((part) =>
    part.steps.map((step) => ({ part: part.part, step, hours: waitHours(step) })),
  );
  return all.sort((one, other) => other.hours - one.hours)[0] ?? null;
}

/** Hours of work and waiting for every step of every part's route. */
export function hoursByStep(results: Results, size: ChartSize): Chart {
  const parts = partsWithHours(results.hours);
  const top =
    Math.max(1, ...parts.flatMap((part) => part.steps.map((step) => outerInterval([step]).high))) * 1.02;
  const columns = Math.min(COLUMNS[size], parts.length);
  const longest = longestWait(parts);
  return {
    id: 'hours-by-step',
    title:
      longest === null || longest.hours === 0
        ? 'Where on its route a job spends its hours'
        : `The longest wait on a route: ${formatPlain(longest.hours)} h before ` +
          `“${shorten(stepName(longest.step), 32)}” of a ${shorten(longest.part, 32)}`,
    description: `Hours per finished job for each step in the order of the route. ${parts
      .map(
        (part) =>
          `${part.part}, ${formatPlain(gatherHours(part.steps).total)} h in all: ${part.steps
            .map(
              (step) =>
                `${stepName(step)} ${formatPlain(step.work.value)} h after ${formatPlain(waitHours(step))} h of waiting`,
            )
            .join(', ')}.`,
      )
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      columns,
      concat: parts.map((part) => panel(part, size, top, columns)),
    },
    footnote:
      'From top to bottom in the order of the route; all charts have the same scale. Line at the end: ' +
      `${intervalWords(results.run)}; the intervals of the pieces are added, which is at least as wide as that of their sum.`,
  };
}
