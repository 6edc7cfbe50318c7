import {
  type ComparisonAnswer,
  type EstimateOrRefused,
  type PlanDifference,
  type WrittenUnit,
  writtenText,
  writtenUnit,
} from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { cell } from './plan-cells.ts';

const VERDICTS: Readonly<Record<PlanDifference['outcome'], string>> = {
  better: '▲ better',
  worse: '▼ worse',
  more: 'more',
  less: 'less',
  'no difference': 'the same in every replication',
  'not told apart': 'not told apart',
  'not compared': 'not compared',
};

/** One plan against another: the chart of differences, and the numbers. */
export function pairSection(
  answer: ComparisonAnswer,
  position: number,
  charts: ReadonlyMap<string, DrawnChart>,
): Html {
  const pair = answer.pairs[position];
  if (pair === undefined) return html``;
  const id = `pair-${position + 1}`;
  return html`
<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title">${pair.against === answer.plans[0]?.name ? pair.plan : `${pair.plan} against ${pair.against}`}</h2>
${figure(charts, `differences-${position + 1}`)}
${pairTable(answer, position, true)}
</section>`;
}

/**
 * Every measure of a pair of plans, with the difference.
 * @param withGain whether to say what the same random numbers save
 */
export function pairTable(answer: ComparisonAnswer, position: number, withGain: boolean): Html {
  const pair = answer.pairs[position];
  const [before, after] = [pair?.against, pair?.plan].map((name) =>
    answer.plans.find((plan) => plan.name === name),
  );
  if (pair === undefined || before === undefined || after === undefined) return html``;
  const reasons = new Reasons();
  const rows = before.measures.flatMap((measure, index) => {
    const [other, difference] = [after.measures[index], pair.differences[index]];
    if (other === undefined || difference === undefined) return [];
    const unit = writtenUnit(measure.unit, valuesOf([measure.value, other.value]), answer.currency);
    const gain = difference.gain === null ? '' : gainWords(difference.gain);
    return [
      [
        html`${nameText(measure.name)}, ${unit.many}`,
        cell(measure.value, unit, reasons),
        cell(other.value, unit, reasons),
        differenceCell(difference, unit, reasons),
        VERDICTS[difference.outcome],
        ...(withGain ? [gain] : []),
      ],
    ];
  });
  return html`
${table(
  `pair-${position + 1}-table`,
  `“${pair.plan}” against “${pair.against}”, with intervals`,
  [
    { title: 'Measure' },
    { title: pair.against, numeric: true },
    { title: pair.plan, numeric: true },
    { title: 'Difference', numeric: true },
    { title: 'Verdict' },
    ...(withGain ? [{ title: 'Gain of the same random numbers', numeric: true }] : []),
  ],
  rows,
  true,
)}
${reasons.list()}`;
}

function differenceCell({ difference, outcome }: PlanDifference, unit: WrittenUnit, reasons: Reasons): Html {
  if (outcome === 'no difference') return html`0`;
  if (difference.kind !== 'estimate') return cell(difference, unit, reasons);
  const sign = difference.value > 0 ? '+' : '';
  return html`${sign}${writtenText(difference, unit)}`;
}

function gainWords(gain: number): string {
  return `${gain >= 10 ? gain.toFixed(0) : gain.toFixed(1)} times`;
}

function valuesOf(estimates: readonly EstimateOrRefused[]): number[] {
  return estimates.flatMap((estimate) => (estimate.kind === 'estimate' ? [estimate.value] : []));
}
