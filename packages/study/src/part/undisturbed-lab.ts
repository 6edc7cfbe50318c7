import type { Lab, LaunchRule, MachineGroup, PartType, Stage } from '@buildweek/model';
import { NO_CONDITIONS } from '@buildweek/model';

const AT_ONCE: LaunchRule = {
  fullShare: 0,
  waitedHours: null,
  beforeClosing: false,
  fixedHours: null,
  promiseAtRisk: false,
  preferAttendedEnd: false,
};

/**
 * The lab in an ordinary week with nobody else's jobs in it and nothing that goes wrong: no closing days, leave,
 * absence or other duties, no breakdowns, failures, rejects or questions. Builds and batches start as soon as
 * somebody can start them, and every machine holds the right material.
 */
export function undisturbedLab(lab: Lab): Lab {
  return {
    ...lab,
    clockChanges: [],
    calendars: lab.calendars.map((calendar) => ({ ...calendar, closedDays: [], extra: [] })),
    people: lab.people.map((group) => ({ ...group, otherDutiesShare: 0, leave: [], absence: null })),
    machines: lab.machines.map(undisturbedMachine),
    stations: lab.stations.map((station) => ({
      ...station,
      ...NO_CONDITIONS,
      calendar: station.calendar,
      unattendedHours: station.unattendedHours,
      fullShare: 0,
      waitedHours: null,
    })),
    parts: lab.parts.map(undisturbedPart),
    demand: [],
    initialState: { jobs: [], machines: [] },
  };
}

function undisturbedMachine(machine: MachineGroup): MachineGroup {
  return {
    ...machine,
    ...NO_CONDITIONS,
    calendar: machine.calendar,
    unattendedHours: machine.unattendedHours,
    launch: AT_ONCE,
    failure: null,
    initialMaterial: null,
  };
}

function undisturbedPart(part: PartType): PartType {
  return {
    ...part,
    stages: part.stages.map(
      (stage): Stage =>
        stage.kind === 'wait' && stage.requesterChance !== null
          ? { ...stage, requesterChance: 0, rejects: null }
          : { ...stage, rejects: null },
    ),
  };
}
