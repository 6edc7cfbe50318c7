import type { Lab } from '@buildweek/model';
import { formatNumber } from '@buildweek/results';
import { handLoads } from '../sure-loads.ts';

/**
 * What a page of arithmetic says of one person who is away: hours that are asked for and there, what piles up, and in
 * how many weeks the hours to spare clear it. It takes everybody's hours and skills for one another's.
 *
 * @param groups of people of which one is away
 * @param awayWeeks for so many weeks
 * @param weeks over which demand and working hours are averaged
 */
export function awayByHand(lab: Lab, groups: readonly string[], awayWeeks: number, weeks: number): string[] {
  const people = handLoads(lab, { fromWeek: 0, weeks }).all.filter(({ kind }) => kind === 'people');
  const asked = people.reduce((sum, one) => sum + one.demandHoursPerWeek, 0);
  const there = people.reduce((sum, one) => sum + one.availableHoursPerWeek, 0);
  if (groups.length === 0 || there === 0) return [];
  const each = groups.map((group) => {
    const own = people.find(({ name }) => name === group);
    const missing = own === undefined ? 0 : own.availableHoursPerWeek / Math.max(1, own.count);
    return `without one of “${group}” ${remainderWords(asked, there - missing, there - asked, awayWeeks)}`;
  });
  return [
    `By hours alone the people are asked for ${hours(asked)} of the ${hours(there)} a week that are there; ${each.join('; ')}.`,
    'That takes the hours and skills of all for one another’s, so it is the least. Played, it takes longer: work waits for those who can do it to be in, and what has piled up makes jobs late long after the hours are made good.',
  ];
}

function remainderWords(asked: number, left: number, spare: number, awayWeeks: number): string {
  if (left >= asked) return `${hours(left)} are left, which is enough`;
  const piledUp = (asked - left) * awayWeeks;
  const after =
    spare > 0
      ? `which ${hours(spare)} a week to spare clear in ${formatNumber(piledUp / spare, 1)} weeks`
      : 'which nobody has hours to clear';
  return `${hours(left)} are left, so that ${hours(piledUp)} of work pile up, ${after}`;
}

function hours(value: number): string {
  return `${formatNumber(value, value < 10 ? 1 : 0)} h`;
}
