import { createLocalTime } from '@buildweek/core';
import type { DatedJob, DemandStream, Lab } from '@buildweek/model';
import { MILLISECONDS_PER_HOUR } from './log-times.ts';
import type { PlayedJob } from './played-jobs.ts';

/**
 * The lab with the jobs of the log instead of the demand of the scenario: they come when they came, with what the log
 * knows of them; what it does not know is drawn as for any job of the demand. Nobody cancels, because cancelled jobs
 * are not played; and the lab is empty at the start.
 *
 * @param lab its plan starts on the Monday from which it is played
 */
export function labOfLog(lab: Lab, jobs: readonly PlayedJob[]): Lab {
  const localTime = createLocalTime(lab.clockChanges);
  const dated = (job: PlayedJob): DatedJob => ({
    atHour: localTime.toLocal(job.enters) / MILLISECONDS_PER_HOUR,
    quantity: job.logged.quantity,
    rush: job.logged.rush,
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
