import type { Overtaking, PartAnswer } from '@buildweek/results';
import type { Layer, LayeredSpec } from '../chart.ts';
import { shareOf } from '../log-axis.ts';
import { INK, MUTED_INK, PAPER } from '../palette.ts';
import { fitName, textWidth } from '../text-width.ts';
import { FONT_SIZE } from '../theme.ts';
import { type QuantityPlot, quantityScale } from './quantity-curves.ts';
import { formatPieces } from './spread-words.ts';
import { quotedRoute } from './ways.ts';

/** More than these are drawn only where the lead changes. */
const MOST_DRAWN = 4;
const ROW = 38;
const WORDS_AT = 13;
const MARK_AT = 25;

const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

/** The way that is ahead of all others at each quantity of the curves. */
function leaders(answer: PartAnswer): string[] {
  const quantities = [...new Set(answer.ways.flatMap((way) => way.curve.map((one) => one.quantity)))];
  return quantities
    .sort((one, other) => one - other)
    .flatMap((quantity) => {
      const found = answer.ways.flatMap((way) => {
        const hours = way.curve.find((one) => one.quantity === quantity)?.hours;
        return hours === undefined ? [] : [{ route: way.route, hours }];
      });
      const [first] = found.sort((one, other) => one.hours - other.hours);
      return first === undefined ? [] : [first.route];
    });
}

/** The way that is ahead for the fewest pieces, the one that is ahead for the most, and from where on it stays so. */
export function firstAndLastLeader(answer: PartAnswer): { first: string; last: string; from: number } | null {
  const inOrder = leaders(answer);
  const [first] = inOrder;
  const last = inOrder.at(-1);
  if (first === undefined || last === undefined) return null;
  const overtaken = answer.overtakings.filter((one) => one.faster === last).map((one) => one.quantity);
  return { first, last, from: Math.max(1, ...overtaken) };
}

/** The overtakings that change who is ahead of all others, in the order of quantities. */
export function changesOfLead(answer: PartAnswer): Overtaking[] {
  const inOrder = leaders(answer);
  return [...answer.overtakings]
    .sort((one, other) => one.quantity - other.quantity)
    .filter((overtaking) =>
      inOrder.some((route, index) => route === overtaking.faster && inOrder[index - 1] === overtaking.slower),
    );
}

/** All overtakings where they are few, else those that change the lead; in the order of quantities. */
export function drawnOvertakings(answer: PartAnswer): Overtaking[] {
  const all = [...answer.overtakings].sort((one, other) => one.quantity - other.quantity);
  return all.length <= MOST_DRAWN ? all : changesOfLead(answer);
}

/** "20 to 51", "22, or not at all". */
export function overtakingRange({ low, high }: Overtaking): string {
  return high === null ? `${low}, or not at all` : `${low} to ${high}`;
}

/** "from 34 pieces on: “powder part” before “resin part” (20 to 51)". */
export function overtakingWords(overtaking: Overtaking): string {
  const { faster, slower, quantity } = overtaking;
  return `from ${formatPieces(quantity)} on: ${quotedRoute(faster)} before ${quotedRoute(slower)} (${overtakingRange(overtaking)})`;
}

/** The longest of several ways to say it that fits. */
function fittingWords(
  overtaking: Overtaking,
  codes: ReadonlyMap<string, string>,
  room: number,
  fontSize: number,
): string {
  const { faster, slower, quantity } = overtaking;
  const begin = `from ${formatPieces(quantity)} on: `;
  const short = `${begin}${codes.get(faster) ?? ''} before ${codes.get(slower) ?? ''}`;
  const candidates = [
    overtakingWords(overtaking),
    `${begin}${quotedRoute(faster)} before ${codes.get(slower) ?? ''} (${overtakingRange(overtaking)})`,
    `${begin}${quotedRoute(faster)} before ${codes.get(slower) ?? ''}`,
    short,
  ];
  return candidates.find((words) => textWidth(words, fontSize) <= room) ?? fitName(short, room, fontSize);
}

/** Words on a ground of paper, since the dotted lines of other rows may pass there. */
function wordLayers(words: string, x: number, y: number): Layer[] {
  const layer = (look: { color: string; stroke?: string; strokeWidth?: number }): Layer => ({
    data: { values: [{ words }] },
    mark: { type: 'text', align: 'left', baseline: 'middle', x, y, ...look },
    encoding: { text: { field: 'words' } },
  });
  return [layer({ color: PAPER, stroke: PAPER, strokeWidth: 4 }), layer({ color: INK })];
}

/**
 * Above curves over the number of pieces, on the same axis: where one way overtakes another, with the spread.
 *
 * @param plot of the curves below
 * @param overtakings in the order of the rows
 * @param room width in which words may stand, CSS pixels; may be more than the plot
 */
export function overtakingStrip(
  plot: QuantityPlot,
  overtakings: readonly Overtaking[],
  room: number,
): LayeredSpec {
  const fontSize = FONT_SIZE[plot.size];
  const height = ROW * overtakings.length;
  const [least, most] = plot.x.domain;
  const inside = (quantity: number): number => Math.min(most, Math.max(least, quantity));
  const codes = new Map(plot.curves.map(({ drawn }) => [drawn.way.route, drawn.code]));
  const rows = overtakings.map((overtaking, index) => {
    const words = fittingWords(overtaking, codes, room, fontSize);
    const at = shareOf(plot.x, inside(overtaking.quantity)) * plot.width;
    const length = textWidth(words, fontSize);
    return {
      words,
      x: Math.max(0, Math.min(at - length / 2, room - length)),
      y: index * ROW + MARK_AT,
      quantity: inside(overtaking.quantity),
      low: inside(overtaking.low),
      high: inside(overtaking.high ?? most),
      open: overtaking.high === null,
      bottom: height,
    };
  });
  const ends = rows.flatMap((row) => [
    { y: row.y, end: row.low },
    ...(row.open ? [] : [{ y: row.y, end: row.high }]),
  ]);
  return {
    width: plot.width,
    height,
    layer: [
      {
        data: { values: rows },
        mark: { type: 'rule', color: INK, strokeWidth: 1, strokeDash: [2, 3] },
        encoding: { x: AT('quantity'), y: AT('y'), y2: { field: 'bottom' } },
      },
      {
        data: { values: rows },
        mark: { type: 'rule', color: MUTED_INK, strokeWidth: 3 },
        encoding: { x: AT('low'), x2: { field: 'high' }, y: AT('y') },
      },
      {
        data: { values: ends },
        mark: { type: 'tick', orient: 'vertical', color: MUTED_INK, thickness: 2, size: 10, opacity: 1 },
        encoding: { x: AT('end'), y: AT('y') },
      },
      {
        data: { values: rows.filter((row) => row.open) },
        mark: {
          type: 'point',
          shape: 'triangle-right',
          filled: true,
          size: 80,
          color: MUTED_INK,
          opacity: 1,
        },
        encoding: { x: AT('high'), y: AT('y') },
      },
      {
        data: { values: rows },
        mark: { type: 'point', shape: 'diamond', filled: true, size: 90, color: INK, opacity: 1 },
        encoding: { x: AT('quantity'), y: AT('y') },
      },
      ...rows.flatMap((row, index) => wordLayers(row.words, row.x, index * ROW + WORDS_AT)),
    ],
    encoding: {
      x: quantityScale(plot, null),
      y: {
        type: 'quantitative',
        axis: null,
        scale: { domain: [0, height], reverse: true, nice: false, zero: false },
      },
    },
  };
}
