import type { AttendedWork, Duration, EquipmentConditions, Lab, MachineGroup, Stage } from '@buildweek/model';
import { dutyTable } from './duty-table.ts';
import { lengthOf } from './minutes.ts';
import { takes } from './small-lab.ts';

/** Makes work possible that the people of a lab could never do. */

const WEEKS = 6;

/**
 * Gives skills that nobody has to those that somebody has, asks for one person where two never meet, and lets
 * work pause that fits no window.
 */
export function mendWork(lab: Lab): Lab {
  const skills = [...new Set(lab.people.flatMap((group) => group.skills))];
  const pieces = lab.demand.flatMap((stream) =>
    stream.arrivals.kind === 'dated' ? stream.arrivals.jobs.map((job) => job.quantity ?? 1) : [],
  );
  const total = pieces.reduce((sum, quantity) => sum + quantity, 0);
  const room = roomOf(lab);

  const mend = <Work extends Pick<AttendedWork, 'skill' | 'persons' | 'pausable'>>(
    work: Work,
    needed: number,
  ): Work => {
    const skill = skills.includes(work.skill) ? work.skill : (skills[0] ?? work.skill);
    const persons = room(skill, work.persons) > 0 ? work.persons : 1;
    return { ...work, skill, persons, pausable: work.pausable || needed > room(skill, persons) };
  };
  const mendPlain = <Work extends AttendedWork>(work: Work | null, factor = 1, more = 0): Work | null =>
    work === null ? null : mend(work, factor * need(work.duration) + more);

  const mendStage = (unmended: Stage): Stage => {
    const stage = divisible(unmended);
    const basis = stage.kind === 'work' || stage.kind === 'station' ? stage.basis : 'job';
    const factor = basis === 'part' ? total : basis === 'job' && stage.level === 'build' ? pieces.length : 1;
    if (stage.kind === 'work')
      return { ...stage, work: mend(stage.work, factor * need(stage.work.duration)) };
    if (stage.kind !== 'station') return stage;
    const { runAttendance } = stage;
    return {
      ...stage,
      load: mendPlain(stage.load),
      runAttendance: runAttendance === null ? null : mend(runAttendance, factor * need(stage.run)),
      unload: mendPlain(stage.unload),
    };
  };
  const mendTrouble = <Group extends EquipmentConditions>(group: Group): Group => ({
    ...group,
    breakdowns: group.breakdowns.map((breakdown) => {
      const { repair } = breakdown;
      return repair.kind === 'own'
        ? { ...breakdown, repair: { ...repair, work: mend(repair.work, 0) } }
        : breakdown;
    }),
    chores: group.chores.map((chore) => ({ ...chore, work: mendPlain(chore.work) })),
  });
  const mendMachines = (group: MachineGroup): MachineGroup => ({
    ...mendTrouble(group),
    prepare: mendPlain(group.prepare),
    setUp: mendPlain(
      group.setUp,
      1,
      Math.max(0, ...group.materialChanges.map((change) => need(change.duration))),
    ),
    firstLayers: mendPlain(group.firstLayers),
    unload: mendPlain(group.unload),
    failure:
      group.failure === null ? null : { ...group.failure, cleaning: mendPlain(group.failure.cleaning) },
  });
  return {
    ...lab,
    machines: lab.machines.map(mendMachines),
    stations: lab.stations.map(mendTrouble),
    parts: lab.parts.map((part) => ({ ...part, stages: part.stages.map(mendStage) })),
  };
}

/** What is said of a job of up to six pieces is a number of hours, so that every share of it is whole minutes. */
function divisible(stage: Stage): Stage {
  const hours = (duration: Duration): Duration => {
    const { actual, typical } = lengthOf(duration);
    return takes(60 * Math.ceil(actual / 60), 60 * Math.ceil(typical / 60));
  };
  if (stage.kind === 'work' && stage.basis === 'job') {
    return { ...stage, work: { ...stage.work, duration: hours(stage.work.duration) } };
  }
  return stage.kind === 'station' && stage.basis === 'job' ? { ...stage, run: hours(stage.run) } : stage;
}

/** What must fit, whichever of the two the lab judges by. */
function need(duration: Duration): number {
  const { actual, typical } = lengthOf(duration);
  return Math.max(actual, typical);
}

/** The longest stretch, in minutes, for which so many persons with a skill are there together. */
function roomOf(lab: Lab): (skill: string, persons: number) => number {
  const known = new Map<string, number>();
  const tables = lab.people.map((group) => {
    const calendar = lab.calendars.find((candidate) => candidate.name === group.calendar);
    return calendar === undefined ? new Int32Array() : dutyTable(calendar, lab.clockChanges, WEEKS);
  });
  return (skill, persons) => {
    const key = `${persons} ${skill}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let room = 0;
    // Weeks three and four: behind the closing days and additional hours. Windows begin at a quarter.
    for (let minute = 2 * 10_080; minute < 4 * 10_080; minute += 15) {
      const left = lab.people.flatMap((group, index) => {
        const end = tables[index]?.[minute] ?? 0;
        return group.skills.includes(skill) && end > 0 ? Array<number>(group.count).fill(end - minute) : [];
      });
      left.sort((one, other) => other - one);
      room = Math.max(room, left[persons - 1] ?? 0);
    }
    known.set(key, room);
    return room;
  };
}
