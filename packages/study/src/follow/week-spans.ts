import type { StateSpan } from '@buildweek/core';
import type { WatchedRow, WatchedSpan } from '@buildweek/results';
import { stepWords } from './step-words.ts';
import type { WeekClock } from './week-clock.ts';
import type { WeekItem } from './week-listing.ts';

type RowName = Pick<WatchedRow, 'name' | 'kind'>;

/** States in which a machine or station holds what it was busy with before. */
const HOLDING: readonly string[] = ['waiting to be unloaded', 'waiting to start'];

/**
 * What one machine, station or person did over the week: its states in order of time, each with the work and the
 * jobs that it was about.
 */
export function spansOf(
  row: RowName,
  states: readonly StateSpan[],
  items: readonly WeekItem[],
  clock: WeekClock,
): WatchedSpan[] {
  const isPerson = row.kind === 'person';
  const own = items.filter(
    ({ kind, unit, persons }) =>
      kind !== 'event' && kind !== 'on duty' && (isPerson ? persons.includes(row.name) : unit === row.name),
  );
  const spans: WatchedSpan[] = [];
  for (const state of states) {
    if ((isPerson ? state.person : state.unit) !== row.name) continue;
    const about = isPerson
      ? workOfPerson(state, own)
      : workOfUnit(state, own, HOLDING.includes(state.state) ? spans.at(-1) : undefined);
    const span = {
      from: clock.within(state.from),
      to: clock.within(state.to),
      state: state.state,
      ...about,
    };
    if (span.to > span.from) addSpan(spans, span);
  }
  return spans;
}

/** One piece of the same that follows upon the other is the same span. */
function addSpan(spans: WatchedSpan[], span: WatchedSpan): void {
  const last = spans.at(-1);
  const isSame =
    last !== undefined &&
    last.state === span.state &&
    last.what === span.what &&
    last.jobs.join() === span.jobs.join() &&
    last.to === span.from;
  if (isSame) spans[spans.length - 1] = { ...last, to: span.to };
  else spans.push(span);
}

type About = Pick<WatchedSpan, 'what' | 'jobs'>;

/** Of what a person does in one state, what began it. */
function workOfPerson(state: StateSpan, own: readonly WeekItem[]): About {
  if (state.state !== 'work' && state.state !== 'overtime') return { what: '', jobs: [] };
  const [item] = own.filter((one) => one.kind !== 'other duties' && overlaps(one, state));
  if (item === undefined) return { what: '', jobs: [] };
  return {
    what: `${wordsOf(item)}${item.unit === null ? '' : ` on ${item.unit}`}`,
    jobs: numbersOf([item]),
  };
}

function workOfUnit(state: StateSpan, own: readonly WeekItem[], before: WatchedSpan | undefined): About {
  const going = own.filter((one) => one.kind !== 'other duties' && overlaps(one, state));
  const steps = going.filter(({ kind }) => kind === 'step');
  const others = going.filter(({ kind }) => kind !== 'step');
  const jobs = numbersOf(steps);
  if (jobs.length === 0 && before !== undefined) return { what: '', jobs: before.jobs };
  const [named] = state.state === 'down' || steps.length === 0 ? others : [];
  return { what: named === undefined ? '' : wordsOf(named), jobs };
}

function wordsOf(item: WeekItem): string {
  return item.kind === 'step' ? stepWords(item) : item.what;
}

/** From 1, for people. */
function numbersOf(items: readonly WeekItem[]): number[] {
  return [...new Set(items.flatMap(({ jobs }) => jobs.map((job) => job + 1)))].sort((a, b) => a - b);
}

function overlaps(item: WeekItem, { from, to }: StateSpan): boolean {
  return item.from < to && (item.to ?? Number.POSITIVE_INFINITY) > from;
}
