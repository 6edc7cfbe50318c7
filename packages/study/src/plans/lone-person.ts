import type { Lab, PeopleGroup } from '@buildweek/model';
import { joinWords } from '@buildweek/results';

/**
 * What hangs on one person in a plan, in a sentence: a search goes for the fewest people, and where the scenario has
 * nobody away it never sees what that costs.
 *
 * @param lab of the plan
 * @returns one sentence, or none where every skill is there twice
 */
export function lonePersonSentences({ people }: Pick<Lab, 'people'>): string[] {
  const there = people.filter(({ count }) => count > 0);
  const skills = [...new Set(there.flatMap((group) => group.skills))].flatMap((skill) => {
    const [first, ...others] = there.filter((group) => group.skills.includes(skill));
    return first !== undefined && first.count === 1 && others.length === 0 ? [{ skill, group: first }] : [];
  });
  if (skills.length === 0) return [];
  const groups = [...new Set(skills.map(({ group }) => group))];
  const hangs = groups.map((group) => {
    const own = skills.filter((one) => one.group === group).map(({ skill }) => `“${skill}”`);
    return `${joinWords(own)} ${own.length === 1 ? 'hangs' : 'hang'} on the only one of “${group.name}”`;
  });
  const never = groups.filter(isNeverAway).map(({ name }) => `“${name}”`);
  const away =
    never.length === 0 ? '' : `; the scenario states no leave and no absence of ${joinWords(never)}`;
  return [`In this plan ${joinWords(hangs)}${away}.`];
}

function isNeverAway({ leave, absence }: PeopleGroup): boolean {
  return leave.length === 0 && absence === null;
}
