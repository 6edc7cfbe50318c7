import {
  ChangeError,
  type ChangeWording,
  changeScenario,
  type Factor,
  factorChanges,
  formatProblem,
  placeText,
} from '@buildweek/scenario';
import { type Controls, hoursOf } from './controls.ts';
import { errorsOf, type PlanReader, type ReadPlan } from './read-plan.ts';
import { isAsPlanned, type ReaderState } from './reader-state.ts';

/** A plan with what a reader has changed. */
export type ChangedPlan =
  | {
      readonly kind: 'plan';
      readonly text: string;
      readonly plan: ReadPlan;
      /** The changes, as `--with` takes them. */
      readonly wordings: readonly string[];
    }
  /** Nothing is changed. */
  | { readonly kind: 'as planned' }
  /** It makes no lab that can work; in the words of the scenario. */
  | { readonly kind: 'refused'; readonly wordings: readonly string[]; readonly reasons: readonly string[] };

/**
 * What becomes of a plan with the changes of a reader: first numbers, then factors, then hours, each on the text that
 * the ones before have left.
 */
export function changedPlan(
  reader: PlanReader,
  plan: ReadPlan,
  text: string,
  controls: Controls,
  state: ReaderState,
): ChangedPlan {
  if (isAsPlanned(state)) return { kind: 'as planned' };
  const factors = controls.factors.flatMap(({ id }) => factorOf(plan, id, state.factors[id] ?? 100));
  const counts = controls.counts.flatMap(({ id, of, group }): ChangeWording[] => {
    const count = state.counts[id];
    if (count === undefined) return [];
    const path = [of, group, 'count'];
    return [{ wording: `${placeText(path)}: ${count}`, path, value: String(count) }];
  });
  const numbers = [...counts, ...factors];
  try {
    const hours =
      state.hours === null ? [] : hoursChanges(reader, plan, changeScenario(text, counts), state.hours);
    const changes = lastOfEach([...numbers, ...hours]);
    const wordings = changes.map(({ wording }) => wording);
    const changed = changeScenario(text, changes);
    const reading = reader.read(changed);
    if (reading.kind === 'scenario') return { kind: 'plan', text: changed, plan: reading, wordings };
    return { kind: 'refused', wordings, reasons: errorsOf(reading.problems).map(formatProblem) };
  } catch (error) {
    if (!(error instanceof ChangeError)) throw error;
    const reasons = [`${error.message}\n  write:    ${error.write}`];
    return { kind: 'refused', wordings: numbers.map(({ wording }) => wording), reasons };
  }
}

function factorOf(plan: ReadPlan, id: Factor, percent: number): ChangeWording[] {
  return factorChanges(plan, id, percent / 100);
}

/** Who is to work when is said of the people who are there after the numbers have changed. */
function hoursChanges(
  reader: PlanReader,
  plan: ReadPlan,
  text: string,
  name: string,
): readonly ChangeWording[] {
  const reading = reader.read(text);
  // What is wrong with the numbers is said of the whole change.
  if (reading.kind === 'problems') return [];
  const option = hoursOf(reading, text).find((one) => one.name === name);
  if (option !== undefined) return option.changes;
  const known = hoursOf(plan, text).map((one) => one.name);
  throw new ChangeError(
    `With these numbers of people there is no “${name}”.`,
    known.slice(0, 3).join(', ') || 'the hours of the plan',
  );
}

/** Of changes at the same place the last holds. */
function lastOfEach(changes: readonly ChangeWording[]): ChangeWording[] {
  const place = ({ path }: ChangeWording): string => path.join(' / ');
  return changes.filter(
    (one, index) => !changes.slice(index + 1).some((later) => place(later) === place(one)),
  );
}
