import { formatCount, formatEstimate, formatLevel, PERCENT } from '@buildweek/charts';
import {
  type EstimateOrRefused,
  type PlanAnswer,
  planLabel,
  type ShownPlan,
  SPEED_MEASURE,
  writtenUnit,
} from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import { handTable } from './hand-table.ts';

const VERDICTS: Readonly<Record<ShownPlan['verdict'], string>> = {
  met: 'meets all',
  missed: 'misses',
  undecided: 'undecided',
  'not tested': 'not tested',
};
const ROLES: Readonly<Record<ShownPlan['role'], string>> = {
  chosen: 'the answer',
  today: 'today',
  'near miss': 'closest',
  'next below': 'next cheaper',
  undecided: 'open',
  'one more': 'one more',
  'one fewer': 'one fewer',
  'along the way': 'on the way',
};

/** A time of the table beside a target in working days would else seem to contradict it. */
const CLOCK_WORDS =
  'Times are by the clock, nights and closed days included, also where a target counts working days.';

/** What a search for a plan says on a terminal: the answer in sentences, then the plans around it. */
export function planText(answer: PlanAnswer, style: Style): string {
  const { headline, shown, currency } = answer;
  const chosen = shown.find(({ role }) => role === 'chosen');
  const sections = [
    style.heading(harmless(answer.scenario.name)),
    headline.map((sentence) => paragraph(sentence, '  ')).join('\n'),
    section('What may be chosen', variedTable(answer, style), style),
    section(
      'The answer and what stands around it',
      plansTable(
        shown.filter(({ role }) => role !== 'along the way'),
        currency,
        style,
      ),
      style,
    ),
    ruledOutSection(answer, style),
    section('How far the search went', searchWords(answer), style),
    answer.handCalculation.length === 0
      ? ''
      : section(
          `Load by hand calculation, ${chosen === undefined ? 'of the plan that comes closest' : 'of the answer'}`,
          [
            handTable(answer.handCalculation, style),
            ...(answer.handSentence === '' ? [] : [paragraph(answer.handSentence, '  ')]),
            paragraph(fewestWords(answer), '  '),
          ].join('\n'),
          style,
        ),
    listSection(
      'Cautions',
      answer.cautions.map(({ topic, text }) => `${topic}. ${text}`),
      style,
    ),
    listSection('Warnings', answer.warnings, style),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function variedTable({ varied }: PlanAnswer, style: Style): string {
  return tableText(
    [words('what'), words('choices'), words('today')],
    varied.map(({ what, choices, today }) => ({ cells: [what, choices, today] })),
    style,
  );
}

function plansTable(shown: readonly ShownPlan[], currency: string | null, style: Style): string {
  const hours = shown.flatMap(({ measures }) => {
    const value = measures.find(({ name }) => name === SPEED_MEASURE)?.value;
    return value?.kind === 'estimate' ? [value.value] : [];
  });
  const unit = writtenUnit('hours', hours, null);
  const chosen = shown.find(({ role }) => role === 'chosen');
  const hasMoney = currency !== null;
  const targets = shown[0]?.targets.map(({ target }) => target) ?? [];
  return tableText(
    [
      ...(hasMoney ? [numbers(`${currency} a year`)] : []),
      numbers(`9 of 10 within, ${unit.many}`),
      ...targets.map((_, index) => numbers(`[${index + 1}] %`)),
    ],
    shown.map((plan): Row => {
      const speed = plan.measures.find(({ name }) => name === SPEED_MEASURE)?.value;
      return {
        over: `${planLabel(plan, chosen)}: ${placeWords(plan)}${purchaseWords(plan, currency)}`,
        cells: [
          ...(hasMoney ? [formatCount(Math.round(plan.committedCost ?? 0))] : []),
          speed?.kind === 'estimate' ? formatEstimate(speed, { ...unit, one: '', many: '' }) : 'never',
          ...plan.targets.map(({ value }) => shareCell(value)),
        ],
      };
    }),
    style,
  ).concat(targetsLegend(shown), `\n${paragraph(CLOCK_WORDS, '  ')}`);
}

/** What has to be bought stands with the name: as a column it would make the table too wide for most terminals. */
function purchaseWords({ purchase }: ShownPlan, currency: string | null): string {
  return currency === null || purchase === null || Math.round(purchase) === 0
    ? ''
    : `, ${formatCount(Math.round(purchase))} ${currency} to buy`;
}

/** What a plan is beside the answer, and why it is not the answer. */
function placeWords(plan: ShownPlan): string {
  const { role, verdict, targets } = plan;
  // The legend below has the wordings.
  const why = targets.reduce(
    (words, { target }, index) => words.replace(`“${target}”`, `[${index + 1}]`),
    plan.why,
  );
  const isNeighbour = role === 'one more' || role === 'one fewer';
  const place = isNeighbour && why !== '' ? why : roleWords(plan);
  const reason = isNeighbour || why === '' ? VERDICTS[verdict] : why;
  return `${place}, ${reason}`;
}

function roleWords({ role, isToday, committedCost }: ShownPlan): string {
  // Without money plans are put in order by how much there is in them.
  const words = role === 'next below' && committedCost === null ? 'next smaller' : ROLES[role];
  return isToday && role !== 'today' ? `${words}, today` : words;
}

function shareCell(value: EstimateOrRefused): string {
  return value.kind === 'estimate' ? formatEstimate(value, { ...PERCENT, one: '', many: '' }) : 'not given';
}

function targetsLegend(shown: readonly ShownPlan[]): string {
  const targets = shown[0]?.targets ?? [];
  return targets
    .map(
      ({ target, asked }, index) =>
        `\n${paragraph(`${target} (asked: ${formatLevel(asked)})`, `  [${index + 1}] `)}`,
    )
    .join('');
}

/** How many of each a page of arithmetic would have taken. */
function fewestWords({ fewestByHand, varied }: PlanAnswer): string {
  const own = fewestByHand.filter(({ name }) => varied.some(({ what }) => what === name));
  const told = (own.length > 0 ? own : fewestByHand).map(
    ({ name, comfortable }) => `${name} ${comfortable ?? '(no number is enough)'}`,
  );
  return `By loads alone (below 85 %) one would have taken ${told.join(', ')}.`;
}

function ruledOutSection({ ruledOut }: PlanAnswer, style: Style): string {
  if (ruledOut.length === 0) return '';
  return section(
    'Plans ruled out before anything was played',
    tableText(
      [numbers('plans'), words('because such a plan'), words('for example')],
      ruledOut.map(({ plans, reason, example }) => ({ cells: [formatCount(plans), reason, example] })),
      style,
    ),
    style,
  );
}

function searchWords({ plans, ruledOut, looked, notLookedAt, run, promise }: PlanAnswer): string {
  const discarded = ruledOut.reduce((sum, one) => sum + one.plans, 0);
  const missed = looked.filter(({ verdict }) => verdict === 'missed');
  const used = looked.reduce((sum, { replications }) => sum + replications, 0);
  return [
    paragraph(
      `${formatCount(plans)} plans: ${formatCount(discarded)} ruled out beforehand, ${formatCount(missed.length)} found to miss a target, ${formatCount(looked.filter(({ verdict }) => verdict === 'undecided').length)} undecided, ${formatCount(notLookedAt)} dearer ones not looked at.`,
      '  ',
    ),
    paragraph(
      `${formatCount(used)} replications of ${run.weeks} weeks decided it; with those that show what stands around the answer ${formatCount(run.replications)}. Seed “${run.seed}”, ${run.ignoredWeeks.weeks} ignored weeks (those of today's plan, for all plans).`,
      '  ',
    ),
    paragraph(promise, '  '),
    paragraph('Intervals are of single values; verdicts come from the sequential test alone.', '  '),
  ].join('\n');
}
