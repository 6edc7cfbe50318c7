import { type PlanAnswer, planLabel } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { formatEstimate, formatLevel, PERCENT, shorten } from '../format.ts';
import { INK, LINE, PAPER, SECOND_LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';
import { planSuffix } from './plan-rows.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 30, narrow: 46 };
const STATES = ['met', 'missed', 'not decided'] as const;

/** What share every plan that is shown reaches of one target, against what is asked for. */
export function targetOfPlans(answer: PlanAnswer, position: number, size: ChartSize): Chart | null {
  const { shown, run } = answer;
  const target = shown[0]?.targets[position];
  if (target === undefined) return null;
  const chosen = shown.find(({ role }) => role === 'chosen');
  const rows = shown.flatMap((plan, index) => {
    const found = plan.targets[position];
    if (plan.role === 'along the way') return [];
    if (found === undefined || found.value.kind !== 'estimate') return [];
    const state =
      found.verdict === 'met' || found.verdict === 'missed' ? found.verdict : ('not decided' as const);
    return [{ plan, value: found.value, state, number: index + 1 }];
  });
  if (rows.length === 0) return null;
  const names = rows.map(({ plan, number }) => ({
    name: `${number}: ${planLabel(plan, chosen)}`,
    suffix: planSuffix(plan),
    strong: plan.role === 'chosen',
  }));
  const words = rows.map(({ value }) => formatEstimate(value, PERCENT));
  const ends = { title: 'reached', words: size === 'wide' ? words : [] };
  const width = plotWidth(names, ends, size);
  const values = rows.map(({ value, state }, row) => ({
    row,
    value: value.value,
    low: Math.max(0, value.low),
    high: Math.min(1, value.high),
    state,
  }));
  const least = Math.min(target.asked, ...values.map(({ low }) => low));
  return {
    id: `target-${position + 1}`,
    title: `“${shorten(target.target, 70)}”: who reaches it`,
    description: rows
      .map(({ plan, state }, row) => `${plan.name}${planSuffix(plan)}: ${words[row]}, ${state}.`)
      .join(' '),
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * rows.length,
      layer: [...marks(values, target.asked), ...rowNames(names, size, 10), ...rowEnds(ends, width, size)],
      encoding: {
        x: {
          type: 'quantitative',
          scale: { domain: [Math.max(0, least - 0.05), 1.005], nice: false },
          axis: { title: 'share', format: '.0%', tickCount: size === 'wide' ? 8 : 4 },
        },
        y: rowAxis(rows.length),
      },
    },
    footnote: `Plans are named by what differs from the answer. Dashed line: ${formatLevel(target.asked)}, what is asked for. Lines: ${formatLevel(run.level)} confidence intervals of each share. Verdicts come from the sequential test, so a plan that was found to miss another target first is not decided here.`,
  };
}

function marks(
  values: readonly { row: number; value: number; low: number; high: number; state: string }[],
  asked: number,
): Layer[] {
  const legend = { title: null, orient: 'top' as const };
  const domain = [...STATES];
  return [
    {
      data: { values: [{ asked }] },
      mark: { type: 'rule', color: SECOND_LINE, strokeWidth: 2, strokeDash: [6, 3] },
      encoding: { x: { field: 'asked', type: 'quantitative' } },
    },
    {
      data: { values: [...values] },
      mark: { type: 'rule', color: INK, strokeWidth: 1.8 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values: [...values] },
      mark: { type: 'point', filled: true, size: 110, opacity: 1, stroke: INK, strokeWidth: 1.4 },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        y: ROW,
        fill: {
          field: 'state',
          type: 'nominal',
          scale: { domain, range: [LINE, SECOND_LINE, PAPER] },
          legend,
        },
        shape: {
          field: 'state',
          type: 'nominal',
          scale: { domain, range: ['circle', 'diamond', 'square'] },
          legend,
        },
      },
    },
  ];
}
