import { type PlanAnswer, type ShownPlan, writtenUnit } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer } from '../chart.ts';
import { formatCount, formatEstimate, formatLevel } from '../format.ts';
import { LABEL_GAP, type LabelPlace, placeLabels } from '../label-places.ts';
import { type LogAxis, logAxis, logLabels, shareOf } from '../log-axis.ts';
import { INK, LINE, MUTED_INK, PAPER, SECOND_LINE } from '../palette.ts';
import { textWidth } from '../text-width.ts';
import { FONT_SIZE, themeFor } from '../theme.ts';
import { PLAN_VERDICTS, planSuffix, speedOf, verdictOfPlan } from './plan-rows.ts';

const HEIGHT: Readonly<Record<ChartSize, number>> = { wide: 340, narrow: 300 };
/** Room for the numbers and the title of the axis of speed. */
const AXIS_ROOM = 80;
/** Room beyond the cheapest and the dearest plan, as a share of what lies between. */
const COST_MARGIN = 0.1;

interface Mark {
  readonly cost: number;
  readonly speed: number;
  readonly low: number;
  readonly high: number;
  readonly verdict: string;
  readonly words: string;
  /** Whether it has a label even in a crowd. */
  readonly isWanted: boolean;
}

/** The axes of the drawing, and its size in pixels. */
interface Plot {
  readonly size: ChartSize;
  readonly width: number;
  readonly height: number;
  readonly costs: readonly [number, number];
  readonly speeds: LogAxis;
}

/** What cost buys: the time that nine of ten jobs take against what a plan costs in a year. */
export function costAgainstSpeed(answer: PlanAnswer, size: ChartSize): Chart | null {
  const { shown, frontier, currency } = answer;
  const known = shown.flatMap((plan) => {
    const speed = speedOf(plan);
    return speed === null || plan.committedCost === null ? [] : [{ plan, speed, cost: plan.committedCost }];
  });
  if (known.length < 2 || currency === null) return null;
  const unit = writtenUnit(
    'hours',
    known.map(({ speed }) => speed.value),
    currency,
  );
  // The answer and today's plan come first: where labels have no room, others go without.
  const marks = known
    .toSorted((one, other) => importance(other.plan) - importance(one.plan))
    .map(
      ({ plan, speed, cost }): Mark => ({
        cost,
        speed: speed.value / unit.size,
        low: speed.low / unit.size,
        high: speed.high / unit.size,
        verdict: verdictOfPlan(plan),
        words: labelOf(plan, shown),
        isWanted: importance(plan) > 0,
      }),
    );
  const plot = plotOf(marks, size);
  const line = frontier.flatMap((name) => {
    const found = known.find(({ plan }) => plan.name === name);
    return found === undefined ? [] : [{ cost: found.cost, speed: found.speed.value / unit.size }];
  });
  return {
    id: 'cost-against-speed',
    title: 'What cost buys: nine of ten jobs are finished within …',
    description: known
      .map(
        ({ plan, speed, cost }) =>
          `${plan.name}${planSuffix(plan)}: ${formatCount(Math.round(cost))} ${currency} a year, ${formatEstimate(speed, unit)}, ${verdictOfPlan(plan)}.`,
      )
      .join(' '),
    spec: {
      config: themeFor(size),
      width: plot.width,
      height: plot.height,
      layer: layers(marks, line, plot),
      encoding: {
        x: {
          type: 'quantitative',
          scale: { domain: [...plot.costs], nice: false },
          axis: {
            title: `${currency} a year, whatever the lab makes`,
            format: '~s',
            tickCount: size === 'wide' ? 8 : 4,
          },
        },
        y: {
          type: 'quantitative',
          scale: { type: 'log', domain: [...plot.speeds.domain], nice: false },
          axis: {
            title: `${unit.many}, each step of the scale a factor`,
            values: [...plot.speeds.ticks],
            labelExpr: logLabels(plot.speeds),
            labelOverlap: false,
          },
        },
      },
    },
    footnote: `Numbers are those of the table of plans, left out where there is no room. Line: plans of which no cheaper one is faster. Bars: ${formatLevel(answer.run.level)} confidence intervals.`,
  };
}

function importance(plan: ShownPlan): number {
  if (plan.role === 'chosen') return 2;
  return plan.isToday ? 1 : 0;
}

function labelOf(plan: ShownPlan, shown: readonly ShownPlan[]): string {
  const number = String(shown.indexOf(plan) + 1);
  if (plan.role === 'chosen') return `${number}: the answer`;
  return plan.isToday ? `${number}: today` : number;
}

function plotOf(marks: readonly Mark[], size: ChartSize): Plot {
  const costs = marks.map(({ cost }) => cost);
  const least = Math.min(...costs);
  const most = Math.max(...costs);
  const margin = (most - least || Math.abs(most) || 1) * COST_MARGIN;
  return {
    size,
    width: CHART_WIDTH[size] - AXIS_ROOM,
    height: HEIGHT[size],
    costs: [least - margin, most + margin],
    speeds: logAxis(marks.flatMap(({ low, speed, high }) => [low, speed, high])),
  };
}

function placesOf(
  marks: readonly Mark[],
  { size, width, height, costs, speeds }: Plot,
): readonly (LabelPlace | null)[] {
  const [least, most] = costs;
  return placeLabels(
    marks.map(({ cost, speed, words, isWanted }) => ({
      x: ((cost - least) / (most - least)) * width,
      y: (1 - shareOf(speeds, speed)) * height,
      width: textWidth(words, FONT_SIZE[size]),
      height: FONT_SIZE[size],
      isWanted,
    })),
    { width, height },
  );
}

function layers(marks: readonly Mark[], line: readonly object[], plot: Plot): Layer[] {
  const legend = { title: null, orient: 'top' as const, columns: plot.size === 'wide' ? 3 : 1 };
  const domain = [...PLAN_VERDICTS];
  const y = { field: 'speed', type: 'quantitative' as const };
  const x = { field: 'cost', type: 'quantitative' as const };
  const places = placesOf(marks, plot);
  // What comes last lies on top.
  const drawn = marks.toReversed();
  return [
    {
      data: { values: [...line] },
      mark: { type: 'line', color: MUTED_INK, strokeWidth: 1.5, strokeDash: [5, 3] },
      encoding: { x, y, order: { field: 'cost', type: 'quantitative' } },
    },
    {
      data: { values: drawn },
      mark: { type: 'rule', color: INK, strokeWidth: 1.6 },
      encoding: { x, y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
    },
    {
      data: { values: drawn },
      mark: { type: 'point', filled: true, size: 120, opacity: 1, stroke: INK, strokeWidth: 1.4 },
      encoding: {
        x,
        y,
        fill: {
          field: 'verdict',
          type: 'nominal',
          scale: { domain, range: [LINE, SECOND_LINE, PAPER] },
          legend,
        },
        shape: {
          field: 'verdict',
          type: 'nominal',
          scale: { domain, range: ['circle', 'diamond', 'square'] },
          legend,
        },
      },
    },
    ...marks.flatMap((mark, index): Layer[] => {
      const place = places[index];
      return place === null || place === undefined
        ? []
        : [
            {
              data: { values: [mark] },
              mark: {
                type: 'text',
                align: place.side === 'right' ? 'left' : 'right',
                baseline: place.end === 'above' ? 'bottom' : 'top',
                dx: place.side === 'right' ? LABEL_GAP.across : -LABEL_GAP.across,
                dy: place.end === 'above' ? -LABEL_GAP.along : LABEL_GAP.along,
              },
              encoding: { x, y, text: { field: 'words' } },
            },
          ];
    }),
  ];
}
