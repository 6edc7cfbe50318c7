import type { WatchedRow, WatchedWeek } from '@buildweek/results';
import type { ChartSize, Layer, LayeredSpec } from '../chart.ts';
import { CLOSED_HOURS, INK, LINE, MUTED_INK, PROCESS_COLOURS, type ProcessName } from '../palette.ts';
import { fitName, textWidth } from '../text-width.ts';
import { FONT_SIZE } from '../theme.ts';
import { DOINGS, type Doing, doingOf, offSpans } from './doings.ts';

/** Height of a row, CSS pixels, with the room above it for its name on a narrow chart. */
const ROW_HEIGHT: Readonly<Record<ChartSize, number>> = { wide: 21, narrow: 32 };
const BAR_ROOM = 17;
const GROUP_GAP = 10;
const NAME_GAP = 14;
const LABEL_SIZE = 10;
const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

/** A row with the place of its bars, CSS pixels from the top. */
export interface PlacedRow {
  readonly row: WatchedRow;
  readonly middle: number;
}

/** The rows from top to bottom, with a gap between machines, stations and people. */
export function placedRows(
  rows: readonly WatchedRow[],
  size: ChartSize,
  top: number,
): { readonly placed: readonly PlacedRow[]; readonly bottom: number } {
  const placed: PlacedRow[] = [];
  let y = top;
  for (const [index, row] of rows.entries()) {
    if (index > 0 && rows[index - 1]?.kind !== row.kind) y += GROUP_GAP;
    placed.push({ row, middle: y + ROW_HEIGHT[size] - BAR_ROOM / 2 - 1 });
    y += ROW_HEIGHT[size];
  }
  return { placed, bottom: y };
}

/** Grounds: when nobody is there over all rows, when a person is off on that row. */
export function shadeLayers(week: WatchedWeek, rows: readonly PlacedRow[], height: number): Layer[] {
  const off = rows.flatMap(({ row, middle }) =>
    offSpans(row).map(({ from, to }) => ({
      from,
      to,
      top: middle - BAR_ROOM / 2 - 1,
      bottom: middle + BAR_ROOM / 2 + 1,
    })),
  );
  return [
    {
      data: { values: week.closed.map(({ from, to }) => ({ from, to, top: 0, bottom: height })) },
      mark: { type: 'rect', color: CLOSED_HOURS, opacity: 1 },
      encoding: { x: AT('from'), x2: { field: 'to' }, y: AT('top'), y2: { field: 'bottom' } },
    },
    {
      data: { values: off },
      mark: { type: 'rect', color: '#e2dfd6', opacity: 1 },
      encoding: { x: AT('from'), x2: { field: 'to' }, y: AT('top'), y2: { field: 'bottom' } },
    },
  ];
}

/** The bars of what is done, one layer for each kind because each has a height of its own. */
export function doingLayers(rows: readonly PlacedRow[], size: ChartSize): Layer[] {
  const kinds = Object.keys(DOINGS) as Doing[];
  const bars = rows.flatMap(({ row, middle }) =>
    row.spans.flatMap((span) => {
      const doing = doingOf(span);
      return doing === null ? [] : [{ from: span.from, to: span.to, y: middle, doing }];
    }),
  );
  const present = kinds.filter((kind) => bars.some((bar) => bar.doing === kind));
  return present.map(
    (kind): Layer => ({
      data: { values: bars.filter((bar) => bar.doing === kind) },
      mark: {
        type: 'bar',
        height: Math.round(DOINGS[kind].height * BAR_ROOM),
        ...(kind === 'runs' || kind === 'down' ? {} : { stroke: LINE, strokeWidth: 0.25 }),
      },
      encoding: {
        x: AT('from'),
        x2: { field: 'to' },
        y: AT('y'),
        color: {
          datum: DOINGS[kind].label,
          type: 'nominal',
          title: null,
          scale: {
            domain: present.map((one) => DOINGS[one].label),
            range: present.map((one) => DOINGS[one].colour),
          },
          legend: {
            title: null,
            orient: 'bottom',
            columns: size === 'wide' ? 4 : 2,
            symbolType: 'square',
            symbolStrokeColor: INK,
            symbolStrokeWidth: 0.5,
          },
        },
      },
    }),
  );
}

/** A frame around everything that was about one job; what follows upon the other is in one. */
export function tracedLayer(rows: readonly PlacedRow[], job: number | null): Layer[] {
  const frames = rows.flatMap(({ row, middle }) =>
    stretchesOf(row, job).map(({ from, to }) => ({
      from,
      to,
      top: middle - BAR_ROOM / 2 - 1,
      bottom: middle + BAR_ROOM / 2 + 1,
    })),
  );
  if (frames.length === 0) return [];
  return [
    {
      data: { values: frames },
      mark: { type: 'rect', filled: false, stroke: INK, strokeWidth: 1.5 },
      encoding: { x: AT('from'), x2: { field: 'to' }, y: AT('top'), y2: { field: 'bottom' } },
    },
  ];
}

function stretchesOf(row: WatchedRow, job: number | null): { from: number; to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  for (const span of row.spans) {
    if (job === null || !span.jobs.includes(job) || doingOf(span) === null) continue;
    const last = stretches.at(-1);
    if (last?.to === span.from) last.to = span.to;
    else stretches.push({ from: span.from, to: span.to });
  }
  return stretches;
}

/** Numbers of the jobs inside the bars of prints and runs that are long enough for them. */
export function jobNumberLayer(rows: readonly PlacedRow[], pixelsPerHour: number): Layer {
  const labels = rows.flatMap(({ row, middle }) =>
    row.spans.flatMap((span) => {
      const words = span.jobs.join(', ');
      const room = (span.to - span.from) * pixelsPerHour - 4;
      if (doingOf(span) !== 'runs' || words === '' || textWidth(words, LABEL_SIZE) > room) return [];
      return [{ x: (span.from + span.to) / 2, y: middle, words }];
    }),
  );
  return {
    data: { values: labels },
    mark: { type: 'text', align: 'center', baseline: 'middle', fontSize: LABEL_SIZE, color: '#ffffff' },
    encoding: { x: AT('x'), y: AT('y'), text: { field: 'words' } },
  };
}

/** Names before the rows of a wide chart, above those of a narrow one, with the mark of the process. */
export function nameLayers(rows: readonly PlacedRow[], size: ChartSize, room: number): Layer[] {
  const fontSize = FONT_SIZE[size] - 1;
  const names = rows.map(({ row, middle }) => ({
    y: size === 'wide' ? middle : middle - BAR_ROOM / 2 - 2,
    name: fitName(row.name, room, fontSize),
  }));
  const processes = rows.flatMap(({ row, middle }) =>
    row.process === null ? [] : [{ y: middle, colour: PROCESS_COLOURS[row.process as ProcessName] }],
  );
  return [
    {
      data: { values: names },
      mark:
        size === 'wide'
          ? { type: 'text', align: 'right', baseline: 'middle', x: -NAME_GAP, fontSize }
          : { type: 'text', align: 'left', baseline: 'bottom', x: 0, fontSize, color: MUTED_INK },
      encoding: { y: AT('y'), text: { field: 'name' } },
    },
    {
      data: { values: processes },
      mark: { type: 'tick', orient: 'vertical', x: -5, thickness: 5, size: 13, opacity: 1 },
      encoding: { y: AT('y'), color: { field: 'colour', type: 'nominal', scale: null } },
    },
  ];
}

/** The vertical axis: CSS pixels from the top. */
export function pixelAxis(height: number): NonNullable<NonNullable<LayeredSpec['encoding']>['y']> {
  return {
    type: 'quantitative',
    axis: null,
    scale: { domain: [0, height], reverse: true, nice: false, zero: false },
  };
}

/** Room for the names, CSS pixels. */
export function roomForNames(rows: readonly WatchedRow[], size: ChartSize, most: number): number {
  if (size === 'narrow') return 0;
  const widths = rows.map(({ name }) => textWidth(fitName(name, most, FONT_SIZE[size]), FONT_SIZE[size]));
  return NAME_GAP + Math.ceil(Math.max(0, ...widths));
}
