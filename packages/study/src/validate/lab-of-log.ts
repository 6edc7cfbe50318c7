import { createLocalTime } from '@buildweek/core';
import type { DatedJob, DemandStream, Lab } from '@buildweek/model';
import { MILLISECONDS_PER_HOUR } from './log-times.ts';
import type { KnownStage } from './logged-stages.ts';
import type { PlayedJob } from './played-jobs.ts';

/** For each part type, stages of which the log has start and end of the work itself. */
export type TimedStages = ReadonlyMap<string, readonly KnownStage[]>;

/** Those of the known stages at which a job's own work can take as long as the log says. */
export function timedStages({ parts }: Lab, known: TimedStages): TimedStages {
  return new Map(
    parts.map(({ name, stages }) => [
      name,
      (known.get(name) ?? []).filter(({ stage, isWork }) => {
        const own = stages.find((one) => one.name === stage);
        const isOwn = own?.kind === 'work' || own?.kind === 'station';
        return isWork && isOwn && (own.basis === 'job' || own.basis === 'part');
      }),
    ]),
  );
}

/**
 * The lab with the jobs of the log instead of the demand of the scenario: they come when they came, with what the log
 * knows of them; what it does not know is drawn as for any job of the demand. Nobody cancels, because cancelled jobs
 * are not played; and the lab is empty at the start.
 *
 * @param lab its plan starts on the Monday from which it is played
 * @param timed stages at which work takes as long as the log says
 */
export function labOfLog(lab: Lab, jobs: readonly PlayedJob[], timed: TimedStages = new Map()): Lab {
  const localTime = createLocalTime(lab.clockChanges);
  const dated = (job: PlayedJob): DatedJob => ({
    atHour: localTime.toLocal(job.enters) / MILLISECONDS_PER_HOUR,
    quantity: job.logged.quantity,
    rush: job.logged.rush,
    ...workOf(job, timed.get(job.part) ?? []),
  });
  const demand = lab.demand.map(
    (stream, position): DemandStream => ({
      ...stream,
      arrivals: { kind: 'dated', jobs: jobs.filter((job) => job.stream === position).map(dated) },
      changes: { ...stream.changes, cancels: null },
    }),
  );
  return { ...lab, demand, initialState: { jobs: [], machines: [] } };
}

function workOf({ logged }: PlayedJob, stages: readonly KnownStage[]): Pick<DatedJob, 'workHours'> {
  const known = stages.flatMap(({ stage, logged: name }): [string, number][] => {
    const { start, end } = logged.stages.find((one) => one.name === name) ?? { start: null, end: null };
    return start === null || end === null ? [] : [[stage, (end - start) / MILLISECONDS_PER_HOUR]];
  });
  return known.length === 0 ? {} : { workHours: Object.fromEntries(known) };
}
