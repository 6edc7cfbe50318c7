import {
  type Chart,
  chartsOf,
  formatRange,
  formatValue,
  leadTimeUnit,
  optionsChart,
  PERCENT,
  shareInWords,
} from '@buildweek/charts';
import {
  CENTS,
  type DecisionAnswer,
  type EstimateOrRefused,
  formatNumber,
  type KeyNumber,
  moneyFigure,
  periodName,
  type ReportDocument,
  type Results,
  type WrittenUnit,
  writtenFigure,
  writtenUnit,
} from '@buildweek/results';
import { isDecision, nameOf, shownResults } from './document.ts';

/** One of the few numbers that carry a decision, as it is written. */
export interface FirstNumber {
  readonly label: string;
  /** With its unit; words where it is not given. */
  readonly value: string;
  /** The interval, with its level; why there is no number. */
  readonly range: string;
  /** What it is without the proposal, what is asked for, and what belongs to it. */
  readonly beside: string;
}

/** The decision in one look. */
export interface FirstLook {
  readonly name: string;
  readonly question: string;
  readonly answer: string;
  readonly reasons: readonly string[];
  readonly numbers: readonly FirstNumber[];
  /** The one chart that shows why; null where there is nothing to draw. */
  readonly chart: Chart | null;
  /** What has to be known before anything is decided; empty where there is nothing. */
  readonly caution: string;
  readonly facts: readonly (readonly [string, string])[];
}

/** What is proposed, the numbers that matter and the chart that shows why. */
export function firstLookOf(document: ReportDocument): FirstLook {
  const results = shownResults(document);
  const common = {
    name: nameOf(document),
    caution: cautionOf(document),
    facts: factsOf(results),
  };
  if (isDecision(document)) {
    return {
      ...common,
      question: document.question,
      answer: document.proposal,
      reasons: document.reasons,
      numbers: document.keyNumbers.map((one) => decisionNumber(one, document)),
      chart: optionsChart(document)[0] ?? chartsOf(results)[0] ?? null,
    };
  }
  const [answer = `The capacity of “${common.name}”.`, ...reasons] = document.headline;
  return {
    ...common,
    question: 'What can this lab promise, and what holds its jobs up?',
    answer,
    reasons,
    numbers: runNumbers(document),
    chart: chartsOf(document).find(({ id }) => id === 'hours-by-part') ?? chartsOf(document)[0] ?? null,
  };
}

function levelWords({ level }: { readonly level: number }): string {
  return `${formatNumber(level * 100, level * 100 === Math.round(level * 100) ? 0 : 1)}\u00a0%`;
}

const SUBJECTS: Readonly<Record<KeyNumber['subject'], string>> = {
  promise: 'Promise kept',
  cost: 'Cost',
  payback: 'Payback',
  speed: 'Speed',
};

function decisionNumber(number: KeyNumber, { currency }: DecisionAnswer): FirstNumber {
  const { subject, unit, value, today, note } = number;
  const values = [value, today].flatMap((one) => (one?.kind === 'estimate' ? [one.value] : []));
  const written = unit === 'years' ? YEARS : writtenUnit(unit, values, currency);
  const missing = (found: EstimateOrRefused): string => {
    if (found.kind !== 'never') return 'not given';
    return subject === 'payback' ? 'not paid back' : 'not in time';
  };
  const asItIs =
    today?.kind === 'estimate' ? figureWords(today, written) : today === null ? '' : missing(today);
  const label = `${SUBJECTS[subject]}: ${number.label}`;
  const beside = [asItIs === '' ? '' : `As it is: ${asItIs}.`, note]
    .filter((words) => words !== '')
    .join(' ');
  if (value.kind !== 'estimate') return { label, value: missing(value), range: value.reason, beside };
  const { value: figure, range } = writtenFigure(value, written);
  return {
    label,
    value: withUnit(figure, written),
    range:
      range === null ? 'known exactly' : `${range.low} to ${range.high} with ${levelWords(value)} confidence`,
    beside,
  };
}

const YEARS: WrittenUnit = { size: 1, one: 'year', many: 'years', leastDecimals: 1, isMoney: false };

function withUnit(figure: string, unit: WrittenUnit): string {
  return `${figure}\u00a0${Number(figure) === 1 ? unit.one : unit.many}`;
}

function figureWords(estimate: Extract<EstimateOrRefused, { kind: 'estimate' }>, unit: WrittenUnit): string {
  const { value, range } = writtenFigure(estimate, unit);
  return `${withUnit(value, unit)}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
}

/** Speed, promises, cost: what a run says of them. */
function runNumbers(results: Results): FirstNumber[] {
  const all = results.jobs.find(({ part, priority }) => part === null && priority === 'all');
  const unit = leadTimeUnit(results);
  const within = all?.percentiles.find(({ share }) => share === 0.9)?.longRun;
  const number = (
    label: string,
    found: EstimateOrRefused | undefined,
    shownIn: typeof unit,
  ): FirstNumber[] => {
    if (found === undefined) return [];
    if (found.kind !== 'estimate') return [{ label, value: 'not given', range: found.reason, beside: '' }];
    const range = formatRange(found, shownIn);
    return [
      {
        label,
        value: formatValue(found, shownIn),
        range: range === null ? 'without any spread' : `${range} with ${levelWords(found)} confidence`,
        beside: '',
      },
    ];
  };
  return [
    ...number(`${shareInWords(0.9)} jobs are finished within`, within, unit),
    ...(all?.onTime.kind === 'estimate' ? number('Promises kept', all.onTime, PERCENT) : []),
    ...costNumber(results),
  ];
}

function costNumber({ money }: Results): FirstNumber[] {
  if (money === null || money.total.perPart.kind !== 'estimate') return [];
  const { value, range } = moneyFigure(money.total.perPart, CENTS);
  return [
    {
      label: 'Cost of a finished part',
      value: `${value}\u00a0${money.currency}`,
      range:
        range === null ? 'without any spread' : `${range} with ${levelWords(money.total.perPart)} confidence`,
      beside: '',
    },
  ];
}

const FIRST_TOPICS: ReadonlyMap<string, string> = new Map([
  ['Unattended running', 'has machines run with nobody there'],
  ['Lone working', 'has people work alone'],
]);

function cautionOf({ cautions }: ReportDocument): string {
  const words = cautions.flatMap(({ topic }) => FIRST_TOPICS.get(topic) ?? []);
  return words.length === 0 ? '' : `The plan ${words.join(' and ')}: see “Before this plan is followed”.`;
}

function factsOf({ run, lab, machines, stations }: Results): (readonly [string, string])[] {
  const units = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
  const persons = lab.people.reduce((sum, group) => sum + group.count, 0);
  return [
    [
      'The lab',
      `${units(machines.length, 'machine', 'machines')}, ${units(stations.length, 'station', 'stations')}, ${units(persons, 'person', 'persons')}, ${units(lab.parts.length, 'part type', 'part types')}`,
    ],
    ['The plan', `${units(run.weeks, 'week', 'weeks')} (one ${periodName(run.weeks)}) from ${lab.startDate}`],
    ['Played', `${run.replications} times with fresh luck each time, seed “${run.seed}”`],
  ];
}
