import { CHART_WIDTH, type ChartSize, type Layer, type VerticalAxis } from './chart.ts';
import { MUTED_INK, PROCESS_COLOURS, type ProcessName } from './palette.ts';
import { fitName, textWidth } from './text-width.ts';
import { FONT_SIZE } from './theme.ts';

const NAME_GAP = 12;
const PROCESS_NAMES: readonly ProcessName[] = ['MEX', 'VPP', 'PBF', 'other'];
const PROCESS_HEIGHT = 15;
const END_GAP: Readonly<Record<ChartSize, number>> = { wide: 16, narrow: 8 };
/** Half a number of the axis stands out on either side of the plot. */
const MARGIN = 14;

/** Where a mark stands on the vertical axis of a chart made of rows. */
export const ROW = { field: 'row', type: 'quantitative' } as const;

/**
 * The vertical axis of a chart made of rows, the first on top. Rows are told by position and not by name, so
 * that equal or shortened names never fall together.
 */
export function rowAxis(rows: number): VerticalAxis {
  return {
    type: 'quantitative',
    axis: null,
    scale: { domain: [-0.5, rows - 0.5], reverse: true, nice: false, zero: false },
  };
}

/** A row's name from the scenario, words behind it that are never cut, and whether it stands out. */
export interface RowName {
  readonly name: string;
  readonly suffix?: string;
  readonly strong?: boolean;
}

/** Room for a name beside a wide plot, or above a row of a narrow one, CSS pixels. */
const NAME_ROOM: Readonly<Record<ChartSize, number>> = { wide: 180, narrow: 290 };

/** The name as it is drawn, cut to the room that there is. */
function drawnName({ name, suffix = '', strong = false }: RowName, size: ChartSize, room: number): string {
  const fontSize = FONT_SIZE[size];
  return `${fitName(name, room - textWidth(suffix, fontSize, strong), fontSize, strong)}${suffix}`;
}

/**
 * The names of the rows: beside the plot on a wide chart, above each row on a narrow one.
 *
 * @param names in the order of the rows
 * @param size of the chart
 * @param lift on a narrow chart, how far above the middle of its row a name stands, CSS pixels
 * @param room for a name, CSS pixels
 */
export function rowNames(
  names: readonly RowName[],
  size: ChartSize,
  lift: number,
  room: number = NAME_ROOM[size],
): Layer[] {
  const rows = names.map((one, row) => ({
    row,
    name: drawnName(one, size, room),
    strong: one.strong ?? false,
  }));
  const present = [true, false].filter((strong) => rows.some((one) => one.strong === strong));
  return present.map((strong): Layer => {
    const fontWeight = strong ? 'bold' : 'normal';
    return {
      data: { values: rows.filter((one) => one.strong === strong) },
      mark:
        size === 'wide'
          ? { type: 'text', align: 'right', baseline: 'middle', x: -NAME_GAP, fontWeight }
          : { type: 'text', align: 'left', baseline: 'bottom', x: 0, dy: -lift, fontWeight },
      encoding: { y: ROW, text: { field: 'name' } },
    };
  });
}

/**
 * A mark in the colour of its process before each row, with its legend below the chart.
 *
 * @param processes in the order of the rows; null where a row belongs to no single process
 */
export function rowProcesses(processes: readonly (ProcessName | null)[]): Layer[] {
  const present = PROCESS_NAMES.filter((name) => processes.includes(name));
  if (present.length === 0) return [];
  return [
    {
      data: { values: processes.flatMap((process, row) => (process === null ? [] : [{ row, process }])) },
      mark: { type: 'tick', orient: 'vertical', x: -4, thickness: 5, size: PROCESS_HEIGHT, opacity: 1 },
      encoding: {
        y: ROW,
        color: {
          field: 'process',
          type: 'nominal',
          scale: { domain: present, range: present.map((name) => PROCESS_COLOURS[name]) },
          legend: {
            title: 'process',
            orient: 'bottom',
            symbolType: 'square',
            symbolStrokeWidth: 0,
            titleOrient: 'left',
          },
        },
      },
    },
  ];
}

/** Words behind the rows, and what stands over them. */
export interface RowEnds {
  readonly title: string;
  readonly words: readonly string[];
}

/** The words behind the plot, one for each row, under their title. */
export function rowEnds(ends: RowEnds, width: number, size: ChartSize): Layer[] {
  if (ends.words.every((one) => one === '')) return [];
  const x = width + END_GAP[size];
  return [
    {
      data: { values: ends.words.map((one, row) => ({ row, words: one })) },
      mark: { type: 'text', align: 'left', baseline: 'middle', x },
      encoding: { y: ROW, text: { field: 'words' } },
    },
    {
      data: { values: [{ words: ends.title }] },
      mark: { type: 'text', align: 'left', baseline: 'bottom', x, y: -4, color: MUTED_INK },
      encoding: { text: { field: 'words' } },
    },
  ];
}

/** Room that the names take to the left of the plot; narrow charts have them above the rows. */
export function nameRoom(names: readonly RowName[], size: ChartSize, room: number = NAME_ROOM[size]): number {
  if (size === 'narrow') return 0;
  const widths = names.map((one) => textWidth(drawnName(one, size, room), FONT_SIZE[size], one.strong));
  return NAME_GAP + Math.ceil(Math.max(0, ...widths));
}

/** Width of the plot, CSS pixels: what names, in their room, and end words leave of the whole chart. */
export function plotWidth(
  names: readonly RowName[],
  ends: RowEnds,
  size: ChartSize,
  room: number = NAME_ROOM[size],
): number {
  const widths = [ends.title, ...ends.words].map((one) => textWidth(one, FONT_SIZE[size]));
  const endRoom = ends.words.every((one) => one === '')
    ? MARGIN
    : END_GAP[size] + Math.ceil(Math.max(...widths));
  return CHART_WIDTH[size] - nameRoom(names, size, room) - endRoom - MARGIN;
}
