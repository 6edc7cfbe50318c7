import {
  type Estimate,
  figureOf,
  formatNumber,
  moneyText,
  type PlanMeasure,
  type StaffAnswer,
  type StaffPlan,
  WHOLE,
  type WrittenUnit,
  writtenUnit,
} from '@buildweek/results';
import { isBetter } from './staff-order.ts';
import { type WaitingPeak, waitingPeak } from './waiting-peaks.ts';

type Facts = Pick<StaffAnswer, 'best' | 'plans'>;

const RUSH = 'nine of ten rush jobs within';

/** So many options are named where several are alike. */
const MOST_NAMES = 3;

/**
 * The answer in sentences: what can be had with the same hours, what more and fewer hours would do, when people are
 * missing, and which rules that breaks.
 *
 * @param deciding position of the measure that puts options in order; -1: none does
 */
export function staffVerdict(facts: Facts, deciding: number, currency: string | null): string[] {
  const [today, ...options] = facts.plans;
  const measure = today?.measures[deciding];
  if (today === undefined || measure === undefined) {
    return [
      'Nothing that could put ways of staffing in order is known of the lab as it is today: it finishes too little.',
    ];
  }
  const best = options.find(({ name }) => name === facts.best?.name) ?? null;
  const groups = (kind: StaffPlan['hoursAgainstToday']): StaffPlan[] =>
    options.filter(({ hoursAgainstToday }) => hoursAgainstToday === kind);
  return [
    ...sameHours(today, best, groups('the same'), facts, deciding),
    ...rushJobs(today, best, groups('the same')),
    ...moreHours(today, best, topOf(groups('more'), deciding), deciding, currency),
    ...fewerHours(today, topOf(groups('fewer'), deciding), deciding, currency),
    ...missing(today),
    ...rules([today, ...(best === null ? [] : [best])]),
  ];
}

function sameHours(
  today: StaffPlan,
  best: StaffPlan | null,
  options: readonly StaffPlan[],
  { best: found }: Facts,
  deciding: number,
): string[] {
  if (options.length === 0) return [];
  const measure = today.measures[deciding];
  if (measure === undefined) return [];
  if (best === null) {
    const [only] = options;
    const none =
      options.length === 1 && only !== undefined
        ? `${quoted(only)} is not`
        : `none of ${options.length} options is`;
    return [`With the same hours, ${none} surely better than today: ${standing(measure)}.`];
  }
  const change = changeWords(measure, best.measures[deciding]);
  const alike = found?.notToldApart ?? [];
  return [
    `With the same hours, ${quoted(best)} ${change}.`,
    ...(alike.length === 0 ? [] : [`As good as that, as far as can be told: ${namesOf(alike)}.`]),
  ];
}

/** What is best for rush jobs, where that is something else. */
function rushJobs(today: StaffPlan, best: StaffPlan | null, options: readonly StaffPlan[]): string[] {
  const rush = today.measures.findIndex(({ name }) => name === RUSH);
  const measure = today.measures[rush];
  const top = topOf(
    options.filter(({ differences }) => differences[rush]?.outcome === 'better'),
    rush,
  );
  if (measure === undefined || top === null || top === best) return [];
  return [
    `For rush jobs ${quoted(top)} is best with the same hours: it ${changeWords(measure, top.measures[rush])}.`,
  ];
}

function moreHours(
  today: StaffPlan,
  best: StaffPlan | null,
  top: StaffPlan | null,
  deciding: number,
  currency: string | null,
): string[] {
  const measure = today.measures[deciding];
  if (top === null || measure === undefined) return [];
  const lead = `${quoted(top)} (${extraWords(top, today, currency)})`;
  const difference = best === null ? top.differences[deciding] : top.againstBest;
  if (difference?.outcome === 'better' && difference.difference.kind === 'estimate') {
    return best === null
      ? [`${lead} ${changeWords(measure, top.measures[deciding])}.`]
      : [`${lead} gains ${sizeWords(difference.difference, measure)} more.`];
  }
  const than = best === null ? 'today' : quoted(best);
  return [
    difference?.outcome === 'worse'
      ? `More hours gain less: the best of them, ${lead}, stays behind ${than}.`
      : `More hours gain nothing that can be told: the best of them, ${lead}, is as good as ${than}.`,
  ];
}

function fewerHours(
  today: StaffPlan,
  top: StaffPlan | null,
  deciding: number,
  currency: string | null,
): string[] {
  const difference = top?.differences[deciding];
  const measure = today.measures[deciding];
  if (top === null || difference === undefined || measure === undefined) return [];
  const lead = `${quoted(top)} (${extraWords(top, today, currency)})`;
  if (difference.outcome === 'better') return [`${lead} ${changeWords(measure, top.measures[deciding])}.`];
  if (difference.outcome === 'not told apart' || difference.outcome === 'no difference') {
    return [`${lead} is as good as today, as far as can be told.`];
  }
  if (difference.difference.kind !== 'estimate') return [];
  return [`${lead} costs ${sizeWords(difference.difference, measure)}.`];
}

/** When people are missing: while somebody is in, and while nobody is. */
function missing({ waiting, duty }: StaffPlan): string[] {
  const attended = waitingPeak(waiting, duty.personsByHourOfWeek, true);
  const closed = waitingPeak(waiting, duty.personsByHourOfWeek, false);
  const words = ({ when, jobs }: WaitingPeak): string => `${when} (${aboutWords(jobs)} at a time)`;
  if (attended === null && closed === null) return ['Today hardly any job ever waits for a person.'];
  if (attended === null)
    return [`Today most jobs wait for a person while nobody is in: ${words(closed as WaitingPeak)}.`];
  const lead = `Today most jobs wait for a person on ${words(attended)}`;
  return [closed === null ? `${lead}.` : `${lead}; while nobody is in, on ${words(closed)}.`];
}

/** A mean that stands without its interval is told roughly. */
function aboutWords(jobs: number): string {
  return jobs < 1 ? 'less than one' : `about ${formatNumber(jobs, 0)}`;
}

function rules(plans: readonly StaffPlan[]): string[] {
  return plans.flatMap(({ name, breaches }) => {
    const [first] = breaches;
    if (first === undefined) return [];
    const others = breaches.length === 1 ? '' : `, and ${breaches.length - 1} more`;
    const who = name === 'today' ? 'Today’s hours break' : `“${name}” breaks`;
    return [
      `${who} a rule that hours are held against here: ${breachWords(first)}${others}. This is no statement about the law; ask those who judge it.`,
    ];
  });
}

/** A rule that is broken, by whom and when. */
export function breachWords({
  person,
  rule,
  when,
  found,
  limit,
  times,
}: StaffPlan['breaches'][number]): string {
  const number = formatNumber(found, 2).replace(/\.?0+$/, '');
  const often = times === 1 ? 'once' : `${times} times`;
  switch (rule) {
    case 'rest':
      return `${person} rests ${number} h (${when}) within 24 h from the start of a duty, less than ${limit} h, ${often}`;
    case 'hours a week':
      return `${person} is on duty for ${number} h in a week, more than ${limit} h, ${often}`;
    case 'days in a row':
      return `${person} is on duty on ${number} days in a row (${when}), more than ${limit}, ${often}`;
  }
}

function topOf(plans: readonly StaffPlan[], deciding: number): StaffPlan | null {
  return plans.reduce<StaffPlan | null>(
    (top, plan) => (top === null || isBetter(plan, top, deciding) ? plan : top),
    null,
  );
}

/** "nine of ten jobs within 6.1 days (5.9 to 6.3)". */
function standing(measure: PlanMeasure): string {
  if (measure.value.kind !== 'estimate') return measure.name;
  const unit = writtenUnit(measure.unit, [measure.value.value], null);
  return measure.unit === 'share'
    ? `${measure.name}: ${withRange(measure.value, unit)}`
    : `${measure.name} ${withRange(measure.value, unit)}`;
}

/** "cuts the time that nine of ten jobs keep from 6.1 to 4.3 days (3.9 to 4.7)". */
function changeWords(before: PlanMeasure, after: PlanMeasure | undefined): string {
  if (before.value.kind !== 'estimate' || after?.value.kind !== 'estimate') return '';
  const unit = writtenUnit(before.unit, [before.value.value, after.value.value], null);
  const { value } = figureOf(before.value, unit.size, unit.leastDecimals);
  const verb = before.unit === 'share' ? 'raises' : 'cuts';
  return `${verb} ${NAMES[before.name] ?? before.name} from ${value} to ${withRange(after.value, unit)}`;
}

/** Measures as the object of a sentence. */
const NAMES: Readonly<Record<string, string>> = {
  'nine of ten jobs within': 'the time within which nine of ten jobs are finished',
  [RUSH]: 'the time within which nine of ten of them are finished',
  'mean lead time': 'the mean lead time',
  'jobs on time': 'the share of jobs on time',
};

function withRange(estimate: Estimate, unit: WrittenUnit): string {
  const { value, range } = figureOf(estimate, unit.size, unit.leastDecimals);
  const name = Number(value) === 1 ? unit.one : unit.many;
  return `${value} ${name}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
}

/** The size of a difference, without its sign. */
function sizeWords({ value, low, high }: Estimate, { unit }: PlanMeasure): string {
  const size = value < 0 ? { value: -value, low: -high, high: -low } : { value, low, high };
  const written = writtenUnit(unit, [value], null);
  const { value: text, range } = figureOf(size, written.size, written.leastDecimals);
  const name = unit === 'share' ? 'percentage points' : Number(text) === 1 ? written.one : written.many;
  return `${text} ${name}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
}

/** "37.5 h a week more, 80 000 EUR a year". */
function extraWords(plan: StaffPlan, today: StaffPlan, currency: string | null): string {
  const hours = plan.duty.roster - today.duty.roster;
  const way = (difference: number): string => (difference > 0 ? 'more' : 'less');
  const words = [`${formatNumber(Math.abs(hours), 1).replace(/\.0$/, '')} h a week ${way(hours)}`];
  if (plan.costPerYear !== null && today.costPerYear !== null && currency !== null) {
    const cost = plan.costPerYear - today.costPerYear;
    words.push(`${moneyText(Math.abs(cost), currency, WHOLE)} a year ${way(cost)}`);
  }
  return words.join(', ');
}

function quoted({ name }: StaffPlan): string {
  return `“${name}”`;
}

function namesOf(names: readonly string[]): string {
  const some = names.slice(0, MOST_NAMES).map((name) => `“${name}”`);
  return names.length > MOST_NAMES
    ? `${some.join(', ')} and ${names.length - MOST_NAMES} more`
    : some.join(', ');
}
