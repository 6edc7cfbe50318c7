import type { Lab } from '@buildweek/model';
import { formatNumber } from '@buildweek/results';
import { labInMonth } from '../../growth/level-of-month.ts';
import { monthLabel, monthWords } from '../../growth/plan-dates.ts';
import { handBeside } from '../../plans/hand-beside.ts';
import { DAYS } from '../../words/figures.ts';
import { busiest, COMFORTABLE_LOAD, loadWords } from './busiest.ts';

/**
 * What a page of arithmetic says of demand that grows: the highest load, when it gets uncomfortable and when it is too
 * much, and the lead time by formulas of queues.
 *
 * @param growthPerMonth compound growth of all demand; null: of each as the scenario states it
 * @param horizon months that are looked at
 * @param weeks over which demand and working hours are averaged
 */
export function growthByHand(
  lab: Lab,
  growthPerMonth: number | null,
  horizon: number,
  weeks: number,
): string[] {
  const labs = Array.from({ length: horizon + 1 }, (_, month) => labInMonth(lab, growthPerMonth, month));
  const loads = labs.map((one) => busiest(one, weeks));
  const [now, last] = [loads[0] ?? null, loads.at(-1) ?? null];
  if (now === null || last === null) return [];
  const month = (position: number): string => monthWords(monthLabel(lab.startDate, position));
  const from = (least: number): number => loads.findIndex((one) => (one?.load ?? 0) >= least);
  const [uncomfortable, tooMuch] = [from(COMFORTABLE_LOAD), from(1)];
  const hours = [labs[0], labs.at(-1)].map((one) =>
    one === undefined ? null : handBeside(one, weeks).handHours,
  );
  return [
    `By loads alone “${now.name}” would be the busiest, with ${loadWords(now.load)} of the hours there at today's demand; in ${month(horizon)} it would be “${last.name}” with ${loadWords(last.load)}.`,
    uncomfortable < 0
      ? `That stays below ${loadWords(COMFORTABLE_LOAD)}, from where on waiting grows fast, in every month that was looked at.`
      : `It reaches ${loadWords(COMFORTABLE_LOAD)}, from where on waiting grows fast, in ${month(uncomfortable)}${tooMuch < 0 ? '' : `, and 100 %, more than there are hours, in ${month(tooMuch)}`}.`,
    `The mean lead time by formulas of queues is ${daysOf(hours[0] ?? null)} at today's demand and ${daysOf(hours[1] ?? null)} in ${month(horizon)}. Loads and formulas know no shifts, no promises and no luck of a quarter, so a target fails earlier than they say.`,
  ];
}

function daysOf(hours: number | null): string {
  return hours === null ? 'without end' : `${formatNumber(hours / DAYS.size, 1)} days`;
}
