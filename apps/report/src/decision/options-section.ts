import { changeLine, OPTION_NAMES, reaches } from '@buildweek/charts';
import {
  bareMoneyText,
  type DecisionAnswer,
  type DecisionOption,
  type EstimateOrRefused,
  type PlanDifference,
  WHOLE,
  type WrittenUnit,
  writtenUnit,
} from '@buildweek/results';
import { term } from '../glossary.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { cell } from '../plans/plan-cells.ts';
import { Reasons } from '../reasons.ts';
import { type Row, table } from '../table.ts';

const MARKS = { reached: '✓', missed: '✗', 'not decided': '?' } as const;
const OUTCOMES: Readonly<Record<PlanDifference['outcome'], string>> = {
  better: '▲',
  worse: '▼',
  more: '',
  less: '',
  'no difference': '=',
  'not told apart': '≈',
  'not compared': '',
};

/** The options side by side: what each changes, costs and reaches, and every measure with its verdict against today. */
export function optionsSection(answer: DecisionAnswer): Html {
  const reasons = new Reasons();
  const { options } = answer;
  return html`
<section id="options-table-section" aria-labelledby="options-table-title">
<h2 id="options-table-title">The options side by side</h2>
<p class="lede">Each was played ${answer.run.replications} times on the ${term('same random numbers')}. ▲ and ▼: better or worse than the lab
as it is; ≈: not told apart from it; =: the same in all ${term('replications')}. ✓ and ✗: the target is reached or missed.</p>
${table(
  'options-table',
  'What each option changes, costs and reaches, with intervals',
  [{ title: 'What' }, ...options.map(({ role }) => ({ title: OPTION_NAMES[role] }))],
  [
    row('Changes', options, (option) => nameText(changeLine(option))),
    ...purchaseRow(answer),
    ...targetRows(options, reasons),
    ...measureRows(answer, reasons),
    row('Why not this one', options, ({ why }) => nameText(why)),
  ],
  true,
)}
${reasons.list()}
</section>`;
}

function row(
  title: Content,
  options: readonly DecisionOption[],
  content: (option: DecisionOption, index: number) => Content,
): Row {
  return [title, ...options.map(content)];
}

function purchaseRow({ options, currency }: DecisionAnswer): Row[] {
  if (currency === null) return [];
  return [
    row(`Equipment to buy, ${currency}`, options, ({ purchase }) =>
      purchase === null ? '–' : bareMoneyText(purchase, WHOLE),
    ),
  ];
}

function targetRows(options: readonly DecisionOption[], reasons: Reasons): Row[] {
  const unit = writtenUnit('share', [], null);
  return (options[0]?.targets ?? []).map(({ target }, position) =>
    row(html`Target: <bdi>${target}</bdi>, %`, options, ({ targets }) => {
      const found = targets[position];
      return found === undefined ? '' : html`${MARKS[reaches(found)]} ${cell(found.value, unit, reasons)}`;
    }),
  );
}

/** Every measure that is better one way, with the verdict of its difference from today. */
function measureRows(answer: DecisionAnswer, reasons: Reasons): Row[] {
  const { options, currency } = answer;
  const told = (options[0]?.measures ?? []).map(({ better }) => better !== 'neither');
  return (options[0]?.measures ?? []).flatMap(({ name, unit }, position) => {
    if (told[position] !== true || unit === 'money') return [];
    const values = options.map(({ measures }) => measures[position]?.value);
    const written = writtenUnit(unit, estimated(values), currency);
    return [
      row(html`${nameText(name)}, ${written.many}`, options, (option, index) => {
        const value = values[index];
        return value === undefined
          ? ''
          : measureCell(value, written, outcomeOf(answer, option, name), reasons);
      }),
    ];
  });
}

function measureCell(
  value: EstimateOrRefused,
  unit: WrittenUnit,
  outcome: PlanDifference['outcome'] | null,
  reasons: Reasons,
): Html {
  const mark = outcome === null ? '' : OUTCOMES[outcome];
  return html`${cell(value, unit, reasons)}${mark === '' ? null : html` <span title="${outcome ?? ''} than today">${mark}</span>`}`;
}

function outcomeOf(
  { pairs, options }: DecisionAnswer,
  option: DecisionOption,
  measure: string,
): PlanDifference['outcome'] | null {
  const today = options.find(({ role }) => role === 'today');
  const pair = pairs.find(({ plan, against }) => plan === option.name && against === today?.name);
  return pair?.differences.find((difference) => difference.measure === measure)?.outcome ?? null;
}

function estimated(values: readonly (EstimateOrRefused | undefined)[]): number[] {
  return values.flatMap((value) => (value?.kind === 'estimate' ? [value.value] : []));
}
