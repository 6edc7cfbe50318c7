import type { Reading } from '../reading.ts';
import type { Scenario } from '../scenario.ts';
import type { SourceNode, SourcePath } from '../source/source-node.ts';
import { dateSpan, dateText } from '../words/dates.ts';
import { WordingError } from '../words/wording-error.ts';

const YEAR_DAYS = 365;

/**
 * @returns the last day that can matter to a plan, in days since 1970-01-01: the end of the weeks in which its
 *   jobs may finish. Weeks that are left out come before the start.
 */
export function lastDayOf({ startDay, settings }: Scenario): number {
  return startDay + 7 * (settings.weeks + settings.capWeeks) - 1;
}

/** Words for the days of a plan. */
export function planWords(scenario: Scenario): string {
  return `${dateText(scenario.startDay)} to ${dateText(lastDayOf(scenario))}`;
}

/**
 * Warns of closed days that have no effect because their year is probably wrong: lists in which no day lies in
 * the plan, and days more than a year away from it. A list for a whole year may well reach over a short plan.
 */
export function checkDates(scenario: Scenario, reading: Reading): void {
  checkClosed(['hours', 'closed'], scenario, reading);
  for (const { name } of scenario.calendars) checkClosed(['hours', name, 'closed'], scenario, reading);
}

function checkClosed(path: SourcePath, scenario: Scenario, reading: Reading): void {
  const node = reading.nodeAt(path);
  if (node === undefined || node.kind === 'map') return;
  const items = node.kind === 'list' ? node.items : [node];
  const last = lastDayOf(scenario);
  const spans = items.flatMap((item, index) => {
    const days = daysOf(item);
    const [from] = days;
    const to = days.at(-1);
    const at = node.kind === 'list' ? [...path, index] : path;
    return from === undefined || to === undefined ? [] : [{ from, to, path: at }];
  });
  const isOutside = spans.every(({ from, to }) => to < scenario.startDay - 1 || from > last);
  const far = spans.filter(({ from, to }) => to < scenario.startDay - YEAR_DAYS || from > last + YEAR_DAYS);
  for (const span of far.length > 0 ? far : isOutside ? spans.slice(0, 1) : []) {
    const text = dateText(span.from);
    reading.report(span.path, 'value', {
      severity: 'warning',
      message:
        far.length > 0 || spans.length === 1
          ? `The closed day ${text} lies outside the plan and has no effect.`
          : 'All of these closed days lie outside the plan and have no effect.',
      found: text,
      expected: `dates in the weeks of the plan: ${planWords(scenario)}`,
      write: `dates from ${dateText(scenario.startDay)} on (is the year right?), or the line without them`,
    });
  }
}

function daysOf(node: SourceNode): readonly number[] {
  if (node.kind !== 'scalar') return [];
  try {
    return dateSpan(node.text);
  } catch (error) {
    // What is no date has been reported by those who read it.
    if (error instanceof WordingError) return [];
    throw error;
  }
}
