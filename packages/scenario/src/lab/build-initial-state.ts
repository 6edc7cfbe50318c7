import type { InitialState, PartType } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioJobAtStart } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { dateText, weekdayOf } from '../words/dates.ts';
import { hoursFromStart } from './build-demand.ts';
import { resolves } from './names.ts';

/** What stands in the lab at the start, with its dates counted from there. */
export function buildInitialState(
  scenario: Scenario,
  parts: readonly PartType[],
  reading: Reading,
): InitialState {
  const atHour = hourOfState(scenario, reading);
  const isEmpty = scenario.machinesAtStart.length === 0;
  const individuals = (isEmpty ? [] : scenario.machines).flatMap((machine) =>
    Array.from({ length: machine.count }, (_, index) => ({
      name: `${machine.name} ${index + 1}`,
      group: machine.name,
    })),
  );
  const busy = scenario.machinesAtStart.map((machine) => machine.machine);
  scenario.jobsAtStart.forEach((job, index) => {
    const path = ['at the start', 'jobs', index];
    checkJob(job, path, scenario, parts, atHour, reading);
    const isBusyInDoubt =
      job.machine !== null && reading.isInDoubt(['at the start', 'machines'], job.machine);
    if (
      job.machine !== null &&
      !isBusyInDoubt &&
      !reading.isMisspelt(['at the start', 'machines', job.machine]) &&
      !reading.isMisspelt(['at the start']) &&
      resolves(reading, [...path, 'in'], job.machine, 'busy machine at the start', busy)
    ) {
      const group = individuals.find((individual) => individual.name === job.machine)?.group;
      const stage = stageOf(job, scenario, parts);
      if (
        stage !== undefined &&
        group !== undefined &&
        (stage.kind !== 'build' || stage.machineGroup !== group)
      ) {
        report(
          reading,
          [...path, 'stage'],
          `"${job.machine}" does not do the stage "${job.stage}".`,
          'the stage that is built on it',
          'the build stage',
        );
      }
    }
  });
  return {
    ...(atHour === 0 ? {} : { atHour }),
    jobs: scenario.jobsAtStart.map((job) => ({
      ...(job.name === null ? {} : { name: job.name }),
      stream: job.demand,
      quantity: job.pieces,
      rush: job.rush,
      arrivedAtHour: job.arrived === null ? atHour : hoursFromStart(job.arrived, scenario),
      dueAtHour: job.due === null ? null : hoursFromStart(job.due, scenario),
      stage: job.stage,
      remainingHours: job.remainingHours,
    })),
    machines: scenario.machinesAtStart.map((machine) => {
      const path = ['at the start', 'machines', machine.machine];
      const names = individuals.map((individual) => individual.name);
      const group = machine.machine.replace(/ \d+$/, '');
      if (!reading.isInDoubt(['machines', group], 'count')) {
        resolves(reading, path, machine.machine, 'machine', names, 'key');
      }
      const busyUntilHour = hoursFromStart(machine.busyUntil, scenario);
      if (busyUntilHour < atHour && !reading.isInDoubt([], 'starts')) {
        report(
          reading,
          [...path, 'busy until'],
          atHour === 0 ? 'This lies before the start of the plan.' : 'This lies before “now”.',
          atHour === 0 ? 'a moment from the start on' : 'a moment from now on',
          `the moment of ${atHour === 0 ? 'the start' : 'now'}, when it only waits to be unloaded`,
        );
      }
      return {
        machine: machine.machine,
        busyUntilHour,
        material: machine.material,
        jobs: scenario.jobsAtStart.flatMap((job, index) => (job.machine === machine.machine ? [index] : [])),
      };
    }),
  };
}

function checkJob(
  job: ScenarioJobAtStart,
  path: SourcePath,
  scenario: Scenario,
  parts: readonly PartType[],
  atHour: number,
  reading: Reading,
): void {
  const demands = scenario.demand.map((demand) => demand.name);
  const partName = scenario.demand.find((demand) => demand.name === job.demand)?.part;
  const part = parts.find((candidate) => candidate.name === partName);
  if (!resolves(reading, [...path, 'demand'], job.demand, 'demand', demands) || part === undefined) return;
  // Stages of a route that could not be read have been reported.
  const route = scenario.routes.find((candidate) => candidate.name === part.route);
  const isLost = part.stages.length < (route?.stages.length ?? 1);
  if (isLost && (route === undefined || route.stages.some(({ name }) => name === job.stage))) return;
  const stageNames = part.stages.map((stage) => stage.name);
  if (!resolves(reading, [...path, 'stage'], job.stage, 'stage of its route', stageNames)) return;
  const stage = stageOf(job, scenario, parts);
  const isLate = job.arrived !== null && hoursFromStart(job.arrived, scenario) > atHour;
  if (isLate && !reading.isInDoubt([], 'starts')) {
    report(
      reading,
      [...path, 'arrived'],
      atHour === 0 ? 'This lies behind the start of the plan.' : 'This lies behind “now”.',
      `a moment up to ${atHour === 0 ? 'the start' : 'now'}`,
      'the job under demand / … / dates',
    );
  }
  const isUnit = stage?.kind === 'build' || stage?.kind === 'station';
  if (isUnit && job.remainingHours !== null) {
    report(
      reading,
      [...path, 'remaining'],
      `What is left of "${job.stage}" is up to the machine.`,
      'the machine that holds the job',
      'in: the machine, and "busy until" under machines',
    );
  }
}

/** Local hour of the plan at which the state holds. */
function hourOfState(scenario: Scenario, reading: Reading): number {
  if (scenario.now === null) return 0;
  const hour = hoursFromStart(scenario.now, scenario);
  if (hour >= 0) return hour;
  if (!reading.isInDoubt([], 'starts')) {
    report(
      reading,
      ['at the start', 'now'],
      'This lies before the start of the plan.',
      `a moment from ${dateText(scenario.startDay)} on`,
      `starts: ${dateText(scenario.now.day - weekdayOf(scenario.now.day))}, the Monday of that week`,
    );
  }
  return 0;
}

function stageOf(job: ScenarioJobAtStart, scenario: Scenario, parts: readonly PartType[]) {
  const partName = scenario.demand.find((demand) => demand.name === job.demand)?.part;
  return parts.find((part) => part.name === partName)?.stages.find((stage) => stage.name === job.stage);
}

function report(reading: Reading, path: SourcePath, message: string, expected: string, write: string): void {
  const node = reading.nodeAt(path);
  reading.report(path, 'value', {
    message,
    ...(node?.kind === 'scalar' ? { found: node.text } : {}),
    expected,
    write,
  });
}
