import type { PartAnswer, QuantityTimes, Spread } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize } from '../chart.ts';
import { HOURS, type Unit } from '../format.ts';
import { themeFor } from '../theme.ts';
import {
  drawnOvertakings,
  firstAndLastLeader,
  overtakingStrip,
  overtakingWords,
} from './overtaking-strip.ts';
import { AXIS_ROOM, curveKey, type QuantityCurve, quantityCurves, quantityPlot } from './quantity-curves.ts';
import { formatPieces, formatSpread, MINUTES } from './spread-words.ts';
import { drawnWays, quotedRoute } from './ways.ts';

type CurvePoint = PartAnswer['ways'][number]['curve'][number];

function curvesOf(
  answer: PartAnswer,
  totalOf: (point: CurvePoint) => number,
  spreadOf: (times: QuantityTimes) => Spread,
): QuantityCurve[] {
  const ways = drawnWays(answer).filter(({ way }) => way.curve.length > 0 || way.quantities.length > 0);
  return ways.map((drawn) => ({
    drawn,
    line: drawn.way.curve.map((point) => ({
      quantity: point.quantity,
      value: totalOf(point) / point.quantity,
    })),
    spreads: drawn.way.quantities.map((times) => ({ quantity: times.quantity, spread: spreadOf(times) })),
  }));
}

function describe(curves: readonly QuantityCurve[], unit: Unit): string {
  return curves
    .map(
      ({ drawn, spreads }) =>
        `${drawn.way.route}: ${spreads
          .map(({ quantity, spread }) => `${formatPieces(quantity)} ${formatSpread(spread, unit)}`)
          .join(', ')}.`,
    )
    .join(' ');
}

/** The way with the least typical value at a quantity. */
function leastAt(
  curves: readonly QuantityCurve[],
  quantity: number,
): { route: string; spread: Spread } | null {
  const found = curves.flatMap(({ drawn, spreads }) => {
    const spread = spreads.find((one) => one.quantity === quantity)?.spread;
    return spread === undefined ? [] : [{ route: drawn.way.route, spread }];
  });
  return found.sort((one, other) => one.spread.typical - other.spread.typical)[0] ?? null;
}

function mostPieces(curves: readonly QuantityCurve[]): number {
  return Math.max(1, ...curves.flatMap((curve) => curve.spreads.map((one) => one.quantity)));
}

function spreadWords(answer: PartAnswer): string {
  return (
    `Line and mark: the play in the middle. Upright line: spread over ${answer.plays} plays; one play in ten is ` +
    'below, one above. Both scales go by factors: a step of the same length is the same factor everywhere.'
  );
}

function hoursTitle(answer: PartAnswer): string {
  const found = firstAndLastLeader(answer);
  if (found === null) return 'Hours per part against the number of pieces';
  const { first, last, from } = found;
  if (from === 1) {
    return `${quotedRoute(last)} takes the fewest hours per part at any number of pieces that was looked at`;
  }
  const begin = `From ${formatPieces(from)} on ${quotedRoute(last)} takes the fewest hours per part`;
  return first === last
    ? `${begin}, as it does for the smallest jobs`
    : `${begin}; for the smallest jobs ${quotedRoute(first)} does`;
}

/** Hours per part against the number of pieces, with the quantities at which one way overtakes another. */
export function hoursPerPart(answer: PartAnswer, size: ChartSize): Chart {
  const curves = curvesOf(
    answer,
    (point) => point.hours,
    (times) => times.hoursPerPart,
  );
  const plot = quantityPlot(curves, size);
  const overtakings = drawnOvertakings(answer);
  const [asked] = answer.asked;
  const when = asked === undefined ? '' : `, asked for on ${asked.label}`;
  return {
    id: 'hours-per-part',
    title: hoursTitle(answer),
    description:
      `Hours until all pieces are finished, over their number${when}. ${describe(curves, HOURS)} ` +
      `${answer.overtakings.length === 0 ? 'No way overtakes another.' : `${answer.overtakings.map(overtakingWords).join('; ')}.`}`,
    spec: {
      config: themeFor(size),
      spacing: 4,
      vconcat: [
        ...(size === 'narrow' ? [curveKey(plot)] : []),
        ...(overtakings.length === 0
          ? []
          : [overtakingStrip(plot, overtakings, CHART_WIDTH[size] - AXIS_ROOM[size] - 8)]),
        quantityCurves(
          plot,
          `hours per part, by the clock`,
          overtakings.map((one) => one.quantity),
        ),
      ],
    },
    footnote:
      `Hours until the last piece is finished, over the number of pieces${when}. ${spreadWords(answer)}` +
      (overtakings.length === 0
        ? ''
        : ' Diamonds above: where one way overtakes another; the bar through it is its spread.') +
      (overtakings.length < answer.overtakings.length
        ? ' Only those that change who is ahead are drawn; the table has all.'
        : ''),
  };
}

function minutesTitle(curves: readonly QuantityCurve[]): string {
  const most = mostPieces(curves);
  const [one, many] = [leastAt(curves, 1), leastAt(curves, most)];
  if (one === null || many === null || most === 1)
    return 'Minutes of people per part against the number of pieces';
  const forOne = `${formatSpread(one.spread, MINUTES)} for one piece`;
  const forMany = `${formatSpread(many.spread, MINUTES)} a piece for ${most}`;
  return one.route === many.route
    ? `${quotedRoute(one.route)} takes the least work by hand: ${forOne}, ${forMany}`
    : `The least work by hand: ${forOne} (${quotedRoute(one.route)}), ${forMany} (${quotedRoute(many.route)})`;
}

/** Minutes of people per part against the number of pieces. */
export function minutesPerPart(answer: PartAnswer, size: ChartSize): Chart {
  const curves = curvesOf(
    answer,
    (point) => point.minutesOfPeople,
    (times) => times.minutesOfPeoplePerPart,
  );
  const plot = quantityPlot(curves, size);
  return {
    id: 'minutes-per-part',
    title: minutesTitle(curves),
    description: `Minutes of people per part. ${describe(curves, MINUTES)}`,
    spec: {
      config: themeFor(size),
      spacing: 4,
      vconcat: [
        ...(size === 'narrow' ? [curveKey(plot)] : []),
        quantityCurves(plot, 'minutes of people per part', []),
      ],
    },
    footnote: `Everything that needs hands, from file preparation to inspection, over the number of pieces. ${spreadWords(answer)}`,
  };
}
