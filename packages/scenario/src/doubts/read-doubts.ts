import type { Doubt, FactorRange, Lab } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import { Attendance } from '../lab/attendance.ts';
import type { AttendedPlace } from '../lab/attended-place.ts';
import { hoursText } from '../lab/hours-text.ts';
import { factorRange } from '../words/factor-range.ts';
import { effectOf, isWorkInDoubt } from './doubt-effect.ts';
import { doubtSubject } from './doubt-name.ts';

/** Of what may become none at all, without the lab making no sense. */
const MAY_BE_NONE = ['breakdowns', 'failed builds', 'rejects', 'absence', 'share of rush'];

/**
 * Reads `doubts`: what is not known for certain, and how far from what the scenario says it may lie.
 *
 * @param places attended work, which has to fit into a shift at the high end of its range too
 * @returns null when nothing is said
 */
export function readDoubts(fields: Fields, lab: Lab, places: readonly AttendedPlace[]): Doubt[] | null {
  if (!fields.has('doubts')) return null;
  const group = fields.group('doubts');
  return group.names().flatMap((name): Doubt[] => {
    const range = group.read(name, factorRange);
    const doubt = range === undefined ? null : doubtOf(name, range, group, lab);
    if (doubt === null) return [];
    checkRange(doubt, group, lab);
    checkFit(doubt, group, lab, places);
    return [doubt];
  });
}

function doubtOf(name: string, range: FactorRange, group: Fields, lab: Lab): Doubt | null {
  try {
    const about = doubtSubject(name, lab);
    if (effectOf(about, lab).changes) return { name, about, ...range };
    const message =
      about.kind === 'demand'
        ? 'Jobs on stated dates, or kept in the lab, cannot become more or fewer by a factor.'
        : `There is nothing in this lab that "${name}" would change.`;
    group.report(name, 'key', message, 'something that the lab has', 'nothing: leave this line out');
  } catch (error) {
    group.reading.reportWording(group.pathOf(name), 'key', name, error);
  }
  return null;
}

function checkRange({ name, about, low, high }: Doubt, group: Fields, lab: Lab): void {
  const value = (range: string, message: string, expected: string): void =>
    group.report(name, 'value', message, expected, range);
  if (low === 0 && !MAY_BE_NONE.includes(about.kind)) {
    value(
      `50 to ${percent(high)} %`,
      `At 0 % there would be no ${about.kind === 'demand' ? 'jobs' : 'time'} at all.`,
      'a low end above 0 %',
    );
  }
  const { largestShare } = effectOf(about, lab);
  if (largestShare * high >= 1) {
    const most = Math.floor(99 / largestShare);
    value(
      `${percent(Math.min(low, most / 100))} to ${most} %`,
      `At ${percent(high)} % it would be ${percent(largestShare * high)} % of all.`,
      `at most ${most} %, so that it stays below all of them`,
    );
  }
  if (low <= 1 && 1 <= high) return;
  group.reading.report(group.pathOf(name), 'value', {
    severity: 'warning',
    message: 'This range leaves out what the scenario itself says, 100 %.',
    found: `${percent(low)} to ${percent(high)} %`,
    expected: 'a range around 100 %, or another value in the scenario',
    write: low > 1 ? `100 to ${percent(high)} %` : `${percent(low)} to 100 %`,
  });
}

/** Work that would fit no shift would wait for ever: that is no answer to a question about the lab. */
function checkFit(doubt: Doubt, group: Fields, lab: Lab, places: readonly AttendedPlace[]): void {
  for (const { path, work, most, what } of places) {
    const stage = path[0] === 'routes' || path[2] === 'times' ? String(path.at(-1)) : null;
    if (work.pausable || !isWorkInDoubt(doubt.about, work, stage)) continue;
    const longest = new Attendance(lab.people, lab.calendars, work.skill).longestHours(work.persons);
    const needed = work.duration.typicalHours * most;
    if (needed > longest || needed * doubt.high <= longest + 1e-9) continue;
    const possible = Math.floor((longest / needed) * 100);
    group.report(
      doubt.name,
      'value',
      `At ${percent(doubt.high)} % the ${what} typically takes ${hoursText(needed * doubt.high)}, and would fit into no shift: the longest stretch is ${hoursText(longest)}.`,
      `at most ${possible} %, or work that may pause`,
      `${percent(Math.min(doubt.low, possible / 100))} to ${possible} %`,
    );
    return;
  }
}

function percent(factor: number): number {
  return Number((factor * 100).toPrecision(4));
}
