import type {
  EstimateOrRefused,
  JobClass,
  MachineState,
  Queue,
  Results,
  StationState,
} from '@buildweek/results';

type Reader = (results: Results) => EstimateOrRefused | undefined;

/** Mean hours from arrival to end. @param part name of a part type; null: all jobs */
export function leadTime(part: string | null = null): Reader {
  return (results) => jobsOf(results, part)?.meanLeadTime;
}

/** Hours that a share of all jobs stays below. */
export function leadTimePercentile(share: number): Reader {
  return (results) => jobsOf(results, null)?.percentiles.find((one) => one.share === share)?.longRun;
}

/** Standard deviation of the hours from arrival to end. */
export function leadTimeDeviation(results: Results): EstimateOrRefused | undefined {
  return jobsOf(results, null)?.standardDeviationOfLeadTime;
}

/** Time average of the jobs in the lab. */
export function jobsInLab(results: Results): EstimateOrRefused | undefined {
  return results.queues.find((queue) => queue.kind === 'all')?.meanLength;
}

/** Mean hours that a job waits in a queue. */
export function wait(queue: string): Reader {
  return (results) => queueOf(results, queue)?.meanWait;
}

/** Time average of the jobs in a queue. */
export function queueLength(queue: string): Reader {
  return (results) => queueOf(results, queue)?.meanLength;
}

/** Share of all time in a state, of the first station of a name. */
export function stationShare(name: string, state: StationState): Reader {
  return (results) =>
    results.stations
      .find((station) => station.group === name)
      ?.states.find((candidate) => candidate.state === state)?.share;
}

/** Share of all time in a state, of the first machine of a name. */
export function machineShare(name: string, state: MachineState): Reader {
  return (results) =>
    results.machines
      .find((machine) => machine.group === name)
      ?.states.find((candidate) => candidate.state === state)?.share;
}

/** Share of their hours on duty that people are busy. */
export function busyShare(group: string): Reader {
  return (results) => results.people.find((people) => people.group === group)?.busyShareOfDuty;
}

function jobsOf(results: Results, part: string | null): JobClass | undefined {
  return results.jobs.find((jobs) => jobs.part === part && jobs.priority === 'all');
}

function queueOf(results: Results, name: string): Queue | undefined {
  return results.queues.find((queue) => queue.name === name);
}
