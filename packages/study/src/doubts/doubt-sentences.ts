import {
  type DoubtEnd,
  type DoubtsAnswer,
  type Estimate,
  figureOf,
  type HeldTarget,
  joinWords,
  periodName,
  writtenUnit,
} from '@buildweek/results';
import { percentOf, shareWords } from '../words/figures.ts';

type Found = Pick<DoubtsAnswer, 'measure' | 'doubts' | 'explainedTogether' | 'held' | 'allHeld'>;

/** A share that is not worth measuring anything for. */
const LITTLE = 0.02;

/** The answer in sentences: whether the plan holds, what matters most, and what to measure next. */
export function doubtSentences(found: Found, weeks: number): string[] {
  return [heldSentence(found, weeks), effectSentence(found), measureSentence(found)].filter(
    (sentence) => sentence !== '',
  );
}

function heldSentence({ held, allHeld }: Found, weeks: number): string {
  const [first] = held;
  const whole = allHeld ?? first;
  if (whole === undefined) return '';
  const periods = periodName(weeks).replace(/^(quarter|period)/, '$1s');
  const target =
    allHeld === null ? `“${whole.target}” still holds` : 'The plan still holds, with all its targets,';
  return `${target} in ${shareWords(whole.inWorlds)} of the ${periods} in the worlds you described; as stated, in ${shareWords(whole.asStated)}.${weakest(held, allHeld)}`;
}

/** The target that fails most often, where there are several. */
function weakest(held: readonly HeldTarget[], allHeld: HeldTarget | null): string {
  if (allHeld === null) return '';
  const [worst] = [...held].sort((one, other) => one.inWorlds.value - other.inWorlds.value);
  if (worst === undefined || worst.inWorlds.value === 1) return '';
  return ` Most often missed is “${worst.target}”, which holds in ${shareWords(worst.inWorlds)}.`;
}

function effectSentence({ measure, doubts }: Found): string {
  if (doubts.length === 0) return '';
  // The largest difference is not always one that can be told: a smaller one with less chance in it may be.
  const first = doubts.find(isTold);
  if (first === undefined) {
    return `No doubt by itself changes “${measure.name}” by more than can be told from chance.`;
  }
  // What may break the plan says more than what would make it easier.
  const ends = [first.low, first.high];
  const harmful = ends.filter((end) => end.outcome === 'differs' && harms(end, measure.better));
  const told = harmful.length > 0 ? harmful : ends;
  const most = [...told].sort((one, other) => size(other) - size(one))[0] as DoubtEnd;
  const base = measure.asStated.kind === 'estimate' ? valueWords(measure.asStated, measure.unit) : null;
  const moved =
    most.value.kind === 'estimate'
      ? `to ${valueWords(most.value, measure.unit)}`
      : 'beyond the end of what was played';
  const without = doubts.filter((doubt) => !isTold(doubt));
  const rest =
    without.length === 0
      ? ''
      : ` No effect can be told of ${joinWords(without.map(({ name }) => `“${name}”`))}.`;
  return `“${first.name}” matters most by itself: at ${percent(most.factor)} it moves “${measure.name}”${base === null ? '' : ` from ${base}`} ${moved}.${rest}`;
}

/** Whether an end of its range differs from what is stated, or lies beyond the end of what was played. */
function isTold({ low, high }: Found['doubts'][number]): boolean {
  return [low, high].some(({ outcome, difference }) => outcome === 'differs' || difference.kind === 'never');
}

function harms({ difference }: DoubtEnd, better: Found['measure']['better']): boolean {
  if (difference.kind !== 'estimate') return false;
  return better === 'lower' ? difference.value > 0 : better === 'higher' && difference.value < 0;
}

function size({ difference }: DoubtEnd): number {
  if (difference.kind === 'never') return Number.POSITIVE_INFINITY;
  return difference.kind === 'estimate' ? Math.abs(difference.value) : 0;
}

/** What to measure first: what explains most of the differences between worlds. */
function measureSentence({ measure, doubts, explainedTogether }: Found): string {
  const shares = doubts.flatMap(({ name, explains }) =>
    explains.kind === 'estimate' ? [{ name, explains }] : [],
  );
  const inOrder = shares.sort((one, other) => other.explains.value - one.explains.value);
  const [first, second] = inOrder;
  if (first === undefined) return '';
  const of = `of what “${measure.name}” differs by between these worlds`;
  if (first.explains.value < LITTLE || first.explains.low === 0) {
    return `Nothing of this is worth measuring first: none explains a share ${of} that can be told from chance.`;
  }
  const close = second !== undefined && second.explains.high >= first.explains.low;
  const rival = close
    ? ` “${second.name}” comes close: ${shareWords(second.explains)}.`
    : second === undefined
      ? ''
      : ` Next is “${second.name}” with ${shareWords(second.explains)}.`;
  const luck =
    explainedTogether.kind === 'estimate'
      ? ` All together explain ${shareWords(explainedTogether)}; the rest is the luck of a period, and what doubts do together.`
      : '';
  return `Measure “${first.name}” first: it explains ${shareWords(first.explains)} ${of}.${rival}${luck}`;
}

function valueWords(estimate: Estimate, unit: DoubtsAnswer['measure']['unit']): string {
  const written = writtenUnit(unit, [estimate.value], null);
  const { value } = figureOf(estimate, written.size, written.leastDecimals);
  return `${value} ${Number(value) === 1 ? written.one : written.many}`;
}

function percent(factor: number): string {
  return `${percentOf(factor)} %`;
}
