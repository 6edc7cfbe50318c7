import { joinWords, type PartAnswer, type Spread } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type LayeredSpec } from '../chart.ts';
import { HOURS } from '../format.ts';
import { GRID, INK } from '../palette.ts';
import { ROW, rowAxis } from '../row-axis.ts';
import { textWidth } from '../text-width.ts';
import { FONT_SIZE, themeFor } from '../theme.ts';
import { formatLength, formatPieces, formatSpread } from './spread-words.ts';
import { type DrawnWay, drawnWays, quotedRoute, wayLabel } from './ways.ts';

const NAME_ROOM = 190;
const GAP = 16;
const STEP: Readonly<Record<ChartSize, number>> = { wide: 30, narrow: 42 };
const BAR = 15;
/** Panels beside each other at most; the first and the last quantity are always among them. */
const MOST_PANELS: Readonly<Record<ChartSize, number>> = { wide: 4, narrow: 2 };
/** Hours from which on the axis has whole ones. */
const WHOLE_FROM = 10;
const FIRST = ', first';

interface ChoiceRow {
  readonly row: number;
  readonly drawn: DrawnWay;
  readonly hours: Spread;
  readonly words: string;
  readonly isFirst: boolean;
}

/** Quantities evenly picked out of all, with the first and the last. */
function pickedQuantities(answer: PartAnswer, most: number): number[] {
  const all = [...new Set(answer.ways.flatMap((way) => way.quantities.map((times) => times.quantity)))].sort(
    (one, other) => one - other,
  );
  if (all.length <= most) return all;
  return Array.from(
    { length: most },
    (_, index) => all[Math.round((index * (all.length - 1)) / (most - 1))] as number,
  );
}

function rowsAt(answer: PartAnswer, quantity: number): ChoiceRow[] {
  const label = answer.asked[0]?.label;
  const found = drawnWays(answer).flatMap((drawn, row) => {
    const hours = drawn.way.quantities
      .find((times) => times.quantity === quantity)
      ?.finished.find((one) => one.asked === label)?.hours;
    return hours === undefined ? [] : [{ row, drawn, hours }];
  });
  const least = formatLength(Math.min(...found.map((one) => one.hours.typical)));
  return found.map((one) => {
    const words = formatLength(one.hours.typical);
    const isFirst = words === least;
    return { ...one, isFirst, words: isFirst ? `${words}${FIRST}` : words };
  });
}

function panel(
  rows: readonly ChoiceRow[],
  quantity: number,
  ways: readonly DrawnWay[],
  width: number,
  size: ChartSize,
  named: boolean,
): LayeredSpec {
  const fontSize = FONT_SIZE[size];
  const words = Math.max(0, ...rows.map((one) => textWidth(one.words, fontSize, one.isFirst)));
  const top = Math.max(
    ...rows.map((one) => one.hours.high),
    ...rows.map(
      (one) =>
        (one.hours.typical * width) / Math.max(1, width - textWidth(one.words, fontSize, one.isFirst) - 12),
    ),
    words === 0 ? 1 : 0,
  );
  const wide = size === 'wide';
  const values = rows.map((one) => ({
    row: one.row,
    from: 0,
    typical: one.hours.typical,
    low: one.hours.low,
    high: one.hours.high,
    colour: one.drawn.colour,
    words: one.words,
  }));
  const names = ways.map((drawn, row) => ({
    row,
    words: wayLabel(drawn, wide ? NAME_ROOM : width, fontSize),
  }));
  const lift = wide ? 0 : 8;
  return {
    title: formatPieces(quantity),
    width,
    height: STEP[size] * ways.length,
    layer: [
      {
        data: { values },
        mark: { type: 'bar', height: BAR, stroke: INK, strokeWidth: 0.6, yOffset: lift - 3 },
        encoding: {
          x: {
            field: 'from',
            type: 'quantitative',
            scale: { domain: [0, top], nice: false },
            axis: {
              title: 'hours',
              format: top >= WHOLE_FROM ? 'd' : '.1~f',
              tickCount: 3,
              gridColor: GRID,
              domain: false,
              ticks: false,
            },
          },
          x2: { field: 'typical' },
          y: ROW,
          color: { field: 'colour', type: 'nominal', scale: null },
        },
      },
      {
        data: { values },
        mark: { type: 'rule', color: INK, strokeWidth: 1.6, yOffset: lift + 8 },
        encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
      },
      ...[true, false].map((isFirst) => ({
        data: { values: values.filter((_, index) => rows[index]?.isFirst === isFirst) },
        mark: {
          type: 'text' as const,
          align: 'left' as const,
          baseline: 'middle' as const,
          dx: 5,
          dy: lift - 3,
          fontWeight: isFirst ? ('bold' as const) : ('normal' as const),
        },
        encoding: {
          x: { field: 'typical', type: 'quantitative' as const },
          y: ROW,
          text: { field: 'words' },
        },
      })),
      ...(named
        ? [
            {
              data: { values: names },
              mark: wide
                ? ({ type: 'text', align: 'right', baseline: 'middle', x: -10, dy: -3 } as const)
                : ({ type: 'text', align: 'left', baseline: 'middle', x: 0, dy: -12 } as const),
              encoding: { y: ROW, text: { field: 'words' } },
            },
          ]
        : []),
    ],
    encoding: { y: rowAxis(ways.length) },
  };
}

function titleOf(
  answer: PartAnswer,
  panels: readonly { quantity: number; rows: readonly ChoiceRow[] }[],
): string {
  const firsts = [panels[0], panels.at(-1)].flatMap((one) => {
    const routes =
      one?.rows.filter((row) => row.isFirst).map((row) => quotedRoute(row.drawn.way.route)) ?? [];
    return one === undefined || routes.length === 0
      ? []
      : [{ routes: joinWords(routes), pieces: `for ${formatPieces(one.quantity)}` }];
  });
  const isOne = new Set(firsts.map((one) => one.routes)).size === 1;
  const pieces = joinWords([...new Set(firsts.map((one) => one.pieces))]);
  const told = isOne
    ? [`${firsts[0]?.routes} ${pieces}`]
    : firsts.map((one) => `${one.routes} ${one.pieces}`);
  const when = answer.asked[0] === undefined ? '' : `, asked for on ${answer.asked[0].label}`;
  return told.length === 0
    ? `Hours until all are finished${when}`
    : `Finished first${when}: ${told.join(', ')}`;
}

/** Hours until all pieces are finished, by way and number of pieces: which way to take. */
export function firstChoice(answer: PartAnswer, size: ChartSize): Chart {
  const ways = drawnWays(answer);
  const panels = pickedQuantities(answer, MOST_PANELS[size]).map((quantity) => ({
    quantity,
    rows: rowsAt(answer, quantity),
  }));
  const width =
    size === 'wide'
      ? Math.floor((CHART_WIDTH.wide - NAME_ROOM - 10 - 14) / Math.max(1, panels.length)) - GAP
      : CHART_WIDTH.narrow - 14;
  return {
    id: 'first-choice',
    title: titleOf(answer, panels),
    description: `Hours by the clock until all pieces are finished. ${panels
      .map(
        ({ quantity, rows }) =>
          `${formatPieces(quantity)}: ${rows
            .map((one) => `${one.drawn.way.route} ${formatSpread(one.hours, HOURS)}`)
            .join(', ')}.`,
      )
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      columns: size === 'wide' ? panels.length : 1,
      spacing: GAP,
      concat: panels.map(({ quantity, rows }, index) =>
        panel(rows, quantity, ways, width, size, size === 'narrow' || index === 0),
      ),
    },
    footnote:
      'Hours by the clock until the last piece is finished, the play in the middle; each number of pieces has its own scale. Line ' +
      `below a bar: spread over ${answer.plays} plays; one play in ten is below, one above.`,
  };
}
