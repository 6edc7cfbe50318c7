import type { AskedMoment, PartAnswer, Timeline } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from '../chart.ts';
import { formatPlain } from '../format.ts';
import { GRID, INK, MUTED_INK } from '../palette.ts';
import { textWidth } from '../text-width.ts';
import { FONT_SIZE, themeFor } from '../theme.ts';
import { clockAxis, clockTicks, midnights } from './clock-axis.ts';
import { formatLength } from './spread-words.ts';
import { stretchBars, stretchKey } from './stretch-bars.ts';
import { fittedWords, printHours, toldStretches, toldWords } from './stretch-words.ts';
import { type DrawnWay, drawnWays, quotedRoute, wayLabel } from './ways.ts';
import { wrapLines } from './wrap-lines.ts';

const NAME_ROOM = 190;
const NAME_GAP = 14;
const END_GAP = 8;
const BAR_ROOM = 26;
const LINE_HEIGHT = 14;
const ROW_GAP: Readonly<Record<ChartSize, number>> = { wide: 14, narrow: 14 };
/** Room for the name above a bar of a narrow chart, CSS pixels. */
const NAME_ABOVE: Readonly<Record<ChartSize, number>> = { wide: 0, narrow: 19 };
const MIDNIGHT = '#8d897f';
/** Room for the name of a stage below a bar, CSS pixels. */
const MOST_NAME = 200;
const SEPARATOR = ' › ';

/** One way, asked for at one moment, with what stands below its bar and where. */
interface Row {
  readonly drawn: DrawnWay;
  readonly timeline: Timeline;
  readonly lines: readonly string[];
  /** Upper edge, CSS pixels. */
  readonly top: number;
  /** Middle of the bar, CSS pixels. */
  readonly bar: number;
}

interface Room {
  readonly size: ChartSize;
  readonly width: number;
  /** For words below the bars; they may stand under the hours at the end. */
  readonly words: number;
  readonly hours: number;
}

const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

function rowsOf(ways: readonly DrawnWay[], asked: AskedMoment, { size, words }: Room): Row[] {
  const rows: Row[] = [];
  let top = 0;
  for (const drawn of ways) {
    const timeline = drawn.way.timelines.find((one) => one.asked === asked.label);
    if (timeline === undefined) continue;
    const fontSize = FONT_SIZE[size] - 1;
    const pieces = toldStretches(timeline).map((told) => fittedWords(told, MOST_NAME, fontSize));
    const lines = wrapLines(pieces, SEPARATOR, words, fontSize);
    rows.push({ drawn, timeline, lines, top, bar: top + NAME_ABOVE[size] + BAR_ROOM / 2 });
    top += NAME_ABOVE[size] + BAR_ROOM + lines.length * LINE_HEIGHT + ROW_GAP[size];
  }
  return rows;
}

function heightOf(rows: readonly Row[], size: ChartSize): number {
  const last = rows.at(-1);
  if (last === undefined) return 0;
  return last.top + NAME_ABOVE[size] + BAR_ROOM + last.lines.length * LINE_HEIGHT + ROW_GAP[size] / 2;
}

/** Names, the marks of the processes, the stages in words, and the hours at the end. */
function wordLayers(rows: readonly Row[], first: number, { size, width }: Room): Layer[] {
  const fontSize = FONT_SIZE[size];
  const wide = size === 'wide';
  const names = rows.map((row) => ({
    y: wide ? row.bar : row.top + NAME_ABOVE.narrow - 6,
    words: wayLabel(row.drawn, wide ? NAME_ROOM : width, fontSize),
  }));
  return [
    {
      data: { values: names },
      mark: wide
        ? { type: 'text', align: 'right', baseline: 'middle', x: -NAME_GAP }
        : { type: 'text', align: 'left', baseline: 'bottom', x: 0 },
      encoding: { y: AT('y'), text: { field: 'words' } },
    },
    {
      data: { values: rows.map((row) => ({ y: row.bar, colour: row.drawn.colour })) },
      mark: { type: 'tick', orient: 'vertical', x: -5, thickness: 5, size: 20, opacity: 1 },
      encoding: { y: AT('y'), color: { field: 'colour', type: 'nominal', scale: null } },
    },
    {
      data: {
        values: rows.flatMap((row) =>
          row.lines.map((words, line) => ({ y: row.bar + BAR_ROOM / 2 + 2 + line * LINE_HEIGHT, words })),
        ),
      },
      mark: { type: 'text', align: 'left', baseline: 'top', x: 0, fontSize: fontSize - 1, color: MUTED_INK },
      encoding: { y: AT('y'), text: { field: 'words' } },
    },
    ...[true, false].map(
      (isFirst): Layer => ({
        data: {
          values: rows
            .filter((row) => (row.timeline.hours === first) === isFirst)
            .map((row) => ({ x: row.timeline.hours, y: row.bar, words: formatLength(row.timeline.hours) })),
        },
        mark: {
          type: 'text',
          align: 'left',
          baseline: 'middle',
          dx: END_GAP,
          fontWeight: isFirst ? 'bold' : 'normal',
        },
        encoding: { x: AT('x'), y: AT('y'), text: { field: 'words' } },
      }),
    ),
  ];
}

/** Lines at the times of the axis and, darker, at midnight; beside the bars only, so that no words are crossed. */
function lineLayers(rows: readonly Row[], asked: AskedMoment, room: Room): Layer[] {
  const across = (hours: readonly number[], color: string): Layer => ({
    data: {
      values: rows.flatMap((row) =>
        hours.map((x) => ({ x, top: row.bar - BAR_ROOM / 2, bottom: row.bar + BAR_ROOM / 2 })),
      ),
    },
    mark: { type: 'rule', color, strokeWidth: 1 },
    encoding: { x: AT('x'), y: AT('top'), y2: { field: 'bottom' } },
  });
  const ticks = clockTicks(asked.hour, room.hours, room.width, room.size).map((tick) => tick.offset);
  return [across(ticks, GRID), across(midnights(asked.hour, room.hours), MIDNIGHT), across([0], INK)];
}

function panel(ways: readonly DrawnWay[], asked: AskedMoment, room: Room, isLast: boolean): LayeredSpec {
  const rows = rowsOf(ways, asked, room);
  const height = heightOf(rows, room.size);
  const first = Math.min(...rows.map((row) => row.timeline.hours));
  return {
    title: { text: `Asked for on ${asked.label}`, frame: 'group' },
    width: room.width,
    height,
    layer: [...lineLayers(rows, asked, room), ...stretchBars(rows, room), ...wordLayers(rows, first, room)],
    encoding: {
      x: clockAxis(
        asked.hour,
        room.hours,
        room.width,
        room.size,
        isLast ? 'time of the week, local; darker lines at midnight' : null,
      ),
      y: {
        type: 'quantitative',
        axis: null,
        scale: { domain: [0, height], reverse: true, nice: false, zero: false },
      },
    },
  };
}

function titleOf(answer: PartAnswer, asked: AskedMoment): string {
  const found = answer.ways.flatMap((way) => {
    const timeline = way.timelines.find((one) => one.asked === asked.label);
    return timeline === undefined ? [] : [{ way, timeline }];
  });
  const [first] = found.sort((one, other) => one.timeline.hours - other.timeline.hours);
  if (first === undefined) return 'From the design to one finished part';
  const print = printHours(first.timeline);
  const printed = print > 0 ? `, of which ${formatLength(print)} are print` : '';
  return `One piece asked for on ${asked.label} is finished first as ${quotedRoute(first.way.route)}: after ${formatLength(first.timeline.hours)}${printed}`;
}

function describe(answer: PartAnswer): string {
  return answer.ways
    .flatMap((way) =>
      way.timelines.map(
        (one) =>
          `${way.route}, asked for on ${one.asked}: ${formatPlain(one.hours)} h, of which ` +
          `${formatPlain(one.attendedHours)} h hands, ${formatPlain(one.unattendedHours)} h by itself, ` +
          `${formatPlain(one.closedHours)} h waiting for somebody; ${toldStretches(one).map(toldWords).join(', ')}.`,
      ),
    )
    .join(' ');
}

/** The way from the design to one finished part, for each moment of asking and each way of making it. */
export function stageTimeline(answer: PartAnswer, size: ChartSize): Chart {
  const ways = drawnWays(answer);
  const timelines = answer.ways.flatMap((way) => way.timelines);
  const longest = (label: string): number =>
    Math.max(1, ...timelines.filter((one) => one.asked === label).map((one) => one.hours));
  const ends = Math.max(...timelines.map((one) => textWidth(formatLength(one.hours), FONT_SIZE[size], true)));
  const width = CHART_WIDTH[size] - (size === 'wide' ? NAME_ROOM + NAME_GAP : 10) - ends - END_GAP - 8;
  const moments = answer.asked.filter((asked) => timelines.some((one) => one.asked === asked.label));
  const [first] = moments;
  return {
    id: 'stage-timeline',
    title: first === undefined ? 'From the design to one finished part' : titleOf(answer, first),
    description: `Stages of one piece by the clock, from the moment of asking until it is finished. ${describe(answer)}`,
    spec: {
      config: themeFor(size),
      spacing: 14,
      vconcat: [
        stretchKey(width, size),
        ...moments.map((asked, index) =>
          panel(
            ways,
            asked,
            { size, width, words: width + ends, hours: longest(asked.label) },
            index === moments.length - 1,
          ),
        ),
      ],
    },
    footnote:
      'Tall dark bar: hands are at work. Lower pale bar: it goes on by itself. Thin line: it waits until somebody ' +
      'comes. Each moment of asking has its own scale. At the end of each row the hours until the part is finished. ' +
      'Drawn is, for each row, the play in the middle, in an empty lab.',
  };
}
