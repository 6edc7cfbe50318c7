import { type PlanAnswer, type ShownPlan, writtenUnit } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer } from '../chart.ts';
import { formatCount, formatEstimate, formatLevel } from '../format.ts';
import { INK, LINE, MUTED_INK, PAPER, SECOND_LINE } from '../palette.ts';
import { themeFor } from '../theme.ts';
import { PLAN_VERDICTS, planSuffix, speedOf, verdictOfPlan } from './plan-rows.ts';

interface Mark {
  readonly cost: number;
  readonly speed: number;
  readonly low: number;
  readonly high: number;
  readonly verdict: string;
  readonly words: string;
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
  const marks = known.map(({ plan, speed, cost }): Mark => {
    return {
      cost,
      speed: speed.value / unit.size,
      low: speed.low / unit.size,
      high: speed.high / unit.size,
      verdict: verdictOfPlan(plan),
      words: labelOf(plan, shown),
    };
  });
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
      width: CHART_WIDTH[size] - 80,
      height: size === 'wide' ? 320 : 260,
      layer: layers(marks, line, size),
      encoding: {
        x: {
          type: 'quantitative',
          scale: { zero: false, padding: 30 },
          axis: {
            title: `${currency} a year, whatever the lab makes`,
            format: '~s',
            tickCount: size === 'wide' ? 8 : 4,
          },
        },
        y: {
          type: 'quantitative',
          scale: { zero: true },
          axis: { title: unit.many, tickCount: 5 },
        },
      },
    },
    footnote: `Numbers are those of the table of plans. Line: plans of which no cheaper one is faster. Bars: ${formatLevel(answer.run.level)} confidence intervals.`,
  };
}

function labelOf(plan: ShownPlan, shown: readonly ShownPlan[]): string {
  const number = String(shown.indexOf(plan) + 1);
  if (plan.role === 'chosen') return `${number} the answer`;
  return plan.isToday ? `${number} today` : number;
}

function layers(marks: readonly Mark[], line: readonly object[], size: ChartSize): Layer[] {
  const legend = { title: null, orient: 'top' as const, columns: size === 'wide' ? 3 : 1 };
  const domain = [...PLAN_VERDICTS];
  const y = { field: 'speed', type: 'quantitative' as const };
  const x = { field: 'cost', type: 'quantitative' as const };
  return [
    {
      data: { values: [...line] },
      mark: { type: 'line', color: MUTED_INK, strokeWidth: 1.5, strokeDash: [5, 3] },
      encoding: { x, y, order: { field: 'cost', type: 'quantitative' } },
    },
    {
      data: { values: [...marks] },
      mark: { type: 'rule', color: INK, strokeWidth: 1.6 },
      encoding: { x, y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
    },
    {
      data: { values: [...marks] },
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
    {
      data: { values: [...marks] },
      mark: { type: 'text', align: 'left', baseline: 'bottom', dx: 8, dy: -4 },
      encoding: { x, y, text: { field: 'words' } },
    },
  ];
}
