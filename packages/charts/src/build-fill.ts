import {
  type Builds,
  type Estimate,
  type EstimateOrRefused,
  formatNumber,
  type Results,
} from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from './chart.ts';
import {
  formatOrReason,
  formatShare,
  formatValue,
  PARTS,
  PERCENT,
  PLAIN,
  shorten,
  type Unit,
} from './format.ts';
import { intervalWords } from './interval-words.ts';
import { BAND, GRID, INK, LINE, MUTED_INK } from './palette.ts';
import { nameRoom, ROW, type RowEnds, rowAxis, rowEnds, rowNames, rowProcesses } from './row-axis.ts';
import { textWidth } from './text-width.ts';
import { FONT_SIZE, themeFor } from './theme.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 38, narrow: 50 };
const BAR = 18;
const GAP = 34;
const MARGIN = 16;
const LABEL_GAP = 6;

export const MILLIMETRES: Unit = { size: 1, one: 'mm', many: 'mm', leastDecimals: 0 };

const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

/** A panel: one estimate of each group as a bar, and how far the bar could reach. */
interface Panel {
  readonly title: string;
  readonly values: readonly EstimateOrRefused[];
  readonly most: readonly number[];
  readonly format: string;
  readonly unit: Unit;
}

function estimates(panel: Panel): { row: number; estimate: Estimate }[] {
  return panel.values.flatMap((estimate, row) => (estimate.kind === 'estimate' ? [{ row, estimate }] : []));
}

/** The value of a bar in words: inside its end where there is room, else behind the interval. */
function labelLayers(panel: Panel, top: number, width: number, size: ChartSize): Layer[] {
  const rows = panel.values.map((value, row) => {
    const words =
      value.kind === 'estimate'
        ? `${formatNumber(value.value / panel.unit.size, 0)}\u00a0${panel.unit.many}`
        : 'not given';
    const end = value.kind === 'estimate' ? Math.max(value.value, value.high) : 0;
    const room = ((panel.most[row] ?? top) - end) / top;
    const fits = room * width > textWidth(words, FONT_SIZE[size]) + 2 * LABEL_GAP;
    return {
      row,
      words,
      x: fits ? end : 0,
      align: fits || end === 0 ? ('behind' as const) : ('inside' as const),
    };
  });
  return (['behind', 'inside'] as const).map((align) => ({
    data: { values: rows.filter((row) => row.align === align) },
    mark: { type: 'text', align: 'left', baseline: 'middle', dx: LABEL_GAP },
    encoding: { x: AT('x'), y: ROW, text: { field: 'words' } },
  }));
}

function panelSpec(
  panel: Panel,
  groups: readonly Builds[],
  results: Results,
  width: number,
  size: ChartSize,
  isNamed: boolean,
  ends: RowEnds | null,
): LayeredSpec {
  const top = Math.max(1e-9, ...panel.most, ...estimates(panel).map(({ estimate }) => estimate.high));
  const bars = estimates(panel).map(({ row, estimate: { value, low, high } }) => ({
    row,
    from: 0,
    value,
    low,
    high,
  }));
  const frames = panel.most.map((most, row) => ({ row, from: 0, most }));
  const names = groups.map((one) => ({ name: one.group }));
  const processes = groups.map(
    (one) => results.lab.machines.find((machine) => machine.name === one.group)?.process ?? null,
  );
  return {
    width,
    height: STEP[size] * groups.length,
    layer: [
      {
        data: { values: frames },
        mark: {
          type: 'bar',
          height: BAR,
          fill: '#ffffff',
          fillOpacity: 0,
          stroke: MUTED_INK,
          strokeWidth: 1,
        },
        encoding: {
          x: {
            ...AT('from'),
            scale: { domain: [0, top], nice: false },
            axis: {
              title: panel.title,
              format: panel.format,
              tickCount: 5,
              gridColor: GRID,
              domain: false,
              ticks: false,
            },
          },
          x2: { field: 'most' },
          y: ROW,
        },
      },
      {
        data: { values: bars },
        mark: { type: 'bar', height: BAR, color: BAND, stroke: LINE, strokeWidth: 0.8 },
        encoding: { x: AT('from'), x2: { field: 'value' }, y: ROW },
      },
      {
        data: { values: bars },
        mark: { type: 'rule', color: INK, strokeWidth: 1.8 },
        encoding: { x: AT('low'), x2: { field: 'high' }, y: ROW },
      },
      ...(['low', 'high'] as const).map(
        (field): Layer => ({
          data: { values: bars },
          mark: { type: 'tick', orient: 'vertical', color: INK, thickness: 1.6, size: 9, opacity: 1 },
          encoding: { x: AT(field), y: ROW },
        }),
      ),
      ...labelLayers(panel, top, width, size),
      ...(isNamed ? rowNames(names, size, BAR / 2 + 3) : []),
      ...(isNamed ? rowProcesses(processes) : []),
      ...(ends === null ? [] : rowEnds(ends, width, size)),
    ],
    encoding: { y: rowAxis(groups.length) },
  };
}

function titleOf(groups: readonly Builds[]): string {
  const known = groups.flatMap(({ group, meanFill, partsPerBuild }) =>
    meanFill.kind === 'estimate' ? [{ group, fill: meanFill.value, partsPerBuild }] : [],
  );
  const ordered = known.sort((one, other) => one.fill - other.fill);
  const [least] = ordered;
  const most = ordered.at(-1);
  if (least === undefined || most === undefined) return 'How full builds are';
  const words = ({ group, fill, partsPerBuild }: typeof least): string =>
    `builds of “${shorten(group, 32)}” are ${formatShare(fill)} full` +
    (partsPerBuild.kind === 'estimate' ? ` and hold ${formatValue(partsPerBuild, PARTS)}` : '');
  const begin = words(most);
  return `On average ${begin}${least === most ? '' : `; ${words(least)}`}`;
}

function describe(one: Builds): string {
  const density =
    one.packingDensity.kind === 'estimate'
      ? `, ${formatOrReason(one.packingDensity, PERCENT)} of the part cake is part`
      : '';
  return (
    `${one.group}: ${formatOrReason(one.partsPerBuild, PARTS)} a build, fill ${formatOrReason(one.meanFill, PERCENT)}` +
    `${one.kind === 'platform' ? ' of the platform' : ' of the height of the bed'}, height ` +
    `${formatOrReason(one.meanHeight, MILLIMETRES)} of at most ${one.mostHeight} mm${density}.`
  );
}

/** How full and how high builds are, by machine group. */
export function buildFill(results: Results, size: ChartSize): Chart {
  const groups = results.builds;
  const panels: Panel[] = [
    {
      title: 'fill: share of the platform, for powder of the height',
      values: groups.map((one) => one.meanFill),
      most: groups.map(() => 1),
      format: '.0%',
      unit: PERCENT,
    },
    {
      title: 'height of a build, mm; frame: the most',
      values: groups.map((one) => one.meanHeight),
      most: groups.map((one) => one.mostHeight),
      format: 'd',
      unit: MILLIMETRES,
    },
  ];
  const names = groups.map((one) => ({ name: one.group }));
  const ends: RowEnds = {
    title: 'parts',
    words: groups.map((one) =>
      one.partsPerBuild.kind === 'estimate' ? formatValue(one.partsPerBuild, PLAIN) : '–',
    ),
  };
  const endRoom = Math.max(...[ends.title, ...ends.words].map((words) => textWidth(words, FONT_SIZE[size])));
  const room = CHART_WIDTH[size] - nameRoom(names, size) - MARGIN - endRoom;
  const width = size === 'wide' ? Math.floor((room - GAP - MARGIN) / 2) : room - MARGIN;
  return {
    id: 'build-fill',
    title: titleOf(groups),
    description: `Builds by machine group. ${groups.map(describe).join(' ')}`,
    spec: {
      config: themeFor(size),
      columns: size === 'wide' ? 2 : 1,
      spacing: GAP,
      concat: panels.map((panel, index) =>
        panelSpec(
          panel,
          groups,
          results,
          width,
          size,
          size === 'narrow' || index === 0,
          index === (size === 'narrow' ? 0 : panels.length - 1) ? ends : null,
        ),
      ),
      resolve: { scale: { color: 'shared' } },
    },
    footnote:
      'Bar: average over builds; frame: the whole platform or bed. Boxes of the parts count with their spacing. On the right the ' +
      'parts of an average build. ' +
      `Line at the end of a bar: ${intervalWords(results.run)}.`,
  };
}
