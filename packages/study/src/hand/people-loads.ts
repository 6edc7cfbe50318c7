import type { Lab } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import type { WeekRange } from './expected-demand.ts';
import { figure, handLoad } from './hand-load.ts';
import { hoursOnDuty } from './resource-hours.ts';
import { type SharedLoad, sharedLoads } from './shared-skills.ts';

/**
 * Work is shared over the hours that other duties leave; then both count against all hours on duty, as the use of
 * people that is simulated does. The two ways of counting reach 100 % together.
 */
export function peopleLoads(lab: Lab, work: ReadonlyMap<string, number>, range: WeekRange): HandLoad[] {
  const hours = lab.people.map((group) => {
    const onDuty = hoursOnDuty(lab, group, range);
    return { onDuty, otherDuties: onDuty * group.otherDutiesShare };
  });
  const loads = sharedLoads(
    work,
    lab.people.map(({ skills }, index) => {
      const { onDuty = 0, otherDuties = 0 } = hours[index] ?? {};
      return { skills, availableHours: onDuty - otherDuties };
    }),
  );
  return lab.people.map((group, index) => {
    const { onDuty = 0, otherDuties = 0 } = hours[index] ?? {};
    const load = loads.find((candidate) => candidate.groups.includes(index));
    const share =
      load === undefined || load.availableHours === 0 ? 0 : load.demandHours / load.availableHours;
    const asked = share * (onDuty - otherDuties) + otherDuties;
    return handLoad(
      group.name,
      'people',
      group.count,
      asked,
      onDuty,
      peopleNote(lab, load, index, hours[index]),
    );
  });
}

function peopleNote(
  lab: Lab,
  load: SharedLoad | undefined,
  own: number,
  hours: { readonly onDuty: number; readonly otherDuties: number } | undefined,
): string {
  if (hours === undefined || hours.onDuty === 0) return 'Nobody of this group is on duty in these weeks.';
  const duties = hours.otherDuties === 0 ? '' : `, and ${figure(hours.otherDuties)} h of other duties`;
  if (load === undefined || load.skills.length === 0) {
    return `The demand asks for nothing that needs this group${duties}.`;
  }
  const others = load.groups.flatMap((group) => (group === own ? [] : [lab.people[group]?.name ?? '']));
  const skills = load.skills.filter((skill) => lab.people[own]?.skills.includes(skill)).join(', ');
  const shared =
    others.length === 0
      ? ''
      : `. Shared with ${others.join(', ')} as evenly as skills allow, whatever the hour; who is there when it is wanted, or alone can do some of it, will be busier`;
  return `Work for ${skills}, builds and batches full${duties}${shared}.`;
}
