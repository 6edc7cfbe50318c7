import {
  type Estimate,
  joinWords,
  type PlanDifference,
  type PlanMeasure,
  SPEED_MEASURE,
  type WrittenUnit,
  writtenFigure,
  writtenUnit,
} from '@buildweek/results';

/** What a sentence tells, where the lab has it, in this order; then what it costs. */
const TOLD = [SPEED_MEASURE, 'nine of ten rush jobs within', 'jobs on time'];
const COST = 'committed cost';

/** Two plans, measure by measure. */
export interface PairFacts {
  readonly plan: string;
  readonly against: string;
  readonly before: readonly PlanMeasure[];
  readonly after: readonly PlanMeasure[];
  readonly differences: readonly PlanDifference[];
  readonly currency: string | null;
}

/**
 * The difference between two plans in one sentence: what the second changes for those who wait for parts, within which
 * bounds it changes nothing that can be told, and what it costs.
 */
export function pairSentence({ plan, against, before, after, differences, currency }: PairFacts): string {
  const lead = `“${plan}” against “${against}”: `;
  if (differences.every(({ outcome }) => outcome === 'no difference')) {
    return `${lead}nothing differs, in any replication.`;
  }
  const factsOf = (name: string): readonly Fact[] => {
    const index = before.findIndex((measure) => measure.name === name);
    const [first, second, difference] = [before[index], after[index], differences[index]];
    return first === undefined || second === undefined || difference === undefined
      ? []
      : [{ before: first, after: second, difference }];
  };
  const facts = TOLD.flatMap(factsOf);
  const told = facts.flatMap((fact) => differenceWords(fact, currency));
  const cost = factsOf(COST).flatMap((fact) => differenceWords(fact, currency));
  const untold = untoldWords(facts, currency);
  const parts = [...told, ...untold, ...cost];
  if (parts.length > 0) return `${lead}${parts.join('; ')}.`;
  return differences.some(({ outcome }) => outcome === 'better' || outcome === 'worse')
    ? `${lead}neither lead times nor promises can be told apart; other measures can.`
    : `${lead}no difference can be told with so many replications.`;
}

/** One measure of both plans. */
interface Fact {
  readonly before: PlanMeasure;
  readonly after: PlanMeasure;
  readonly difference: PlanDifference;
}

/** What cannot be told apart, and how far apart it may be for all that is known. */
function untoldWords(facts: readonly Fact[], currency: string | null): string[] {
  const words = facts.flatMap(({ before, difference: { difference, outcome } }) => {
    if (outcome !== 'not told apart' || difference.kind !== 'estimate') return [];
    const written = writtenUnit(before.unit, [Math.max(-difference.low, difference.high)], currency);
    const { range } = writtenFigure(difference, written);
    if (range === null) return [];
    const name = before.unit === 'share' ? 'percentage points' : written.many;
    return [`${before.name} (${range.low} to ${range.high} ${name})`];
  });
  return words.length === 0 ? [] : [`no difference can be told in ${joinWords(words)}`];
}

/** Nothing where the two are not told apart. */
function differenceWords(
  { before, after, difference: { difference, outcome } }: Fact,
  currency: string | null,
): string[] {
  if (after.value.kind === 'never' && before.value.kind === 'estimate') {
    return [`${after.name} no time that was played (before: ${valueWords(before.value, before, currency)})`];
  }
  if (before.value.kind === 'never' && after.value.kind === 'estimate') {
    return [`${after.name} ${valueWords(after.value, after, currency)}, before in no time that was played`];
  }
  if (difference.kind !== 'estimate' || outcome === 'not told apart' || outcome === 'no difference')
    return [];
  if (before.value.kind !== 'estimate' || after.value.kind !== 'estimate') return [];
  const values = [before.value.value, after.value.value];
  const unit = writtenUnit(before.unit, values, currency);
  const way = wayWords(before, difference.value);
  return [
    `${before.name} ${figure(after.value, unit)} instead of ${figure(before.value, unit)}, ${sizeWords(difference, before, currency)} ${way}`,
  ];
}

function wayWords({ unit }: PlanMeasure, difference: number): string {
  if (unit === 'hours') return difference < 0 ? 'sooner' : 'later';
  return difference > 0 ? 'more' : 'less';
}

/** How large the difference is, without its sign, with its interval. */
function sizeWords(difference: Estimate, { unit }: PlanMeasure, currency: string | null): string {
  const { value, low, high } = difference;
  const size = value >= 0 ? { value, low, high } : { value: -value, low: -high, high: -low };
  const written = writtenUnit(unit, [value], currency);
  const { value: text, range } = writtenFigure(size, written);
  // A difference of two percentages is no percentage of either.
  const name = unit === 'share' ? 'percentage points' : Number(text) === 1 ? written.one : written.many;
  return `${text} ${name}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
}

function valueWords(estimate: Estimate, { unit }: PlanMeasure, currency: string | null): string {
  return figure(estimate, writtenUnit(unit, [estimate.value], currency));
}

function figure(estimate: Estimate, unit: WrittenUnit): string {
  const { value } = writtenFigure(estimate, unit);
  return `${value} ${Number(value) === 1 ? unit.one : unit.many}`;
}
