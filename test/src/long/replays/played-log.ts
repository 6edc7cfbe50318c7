import { createSimulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReplayQuestion } from '@buildweek/study';
import { STARTS, WEEKS } from './small-lab.ts';

type LoggedJobs = ReplayQuestion['log'];

const MONDAY = Date.parse(`${STARTS}T00:00Z`);
const MILLISECONDS_PER_WEEK = 604_800_000;

/** Plays labs, and writes down what became of their requests as a clerk would: one log for each seed. */
export function createClerk(lab: Lab): (seed: string) => LoggedJobs {
  const simulator = createSimulator(lab);
  return (seed) => {
    const { trace } = simulator.simulate({
      // What is played to judge the log has other luck.
      seed: `log of ${seed}`,
      replication: 0,
      ignoredWeeks: 0,
      weeks: WEEKS,
      capWeeks: 0,
      trace: true,
      queueWaits: false,
    });
    const entries = trace ?? [];
    const ends = new Map(
      entries.flatMap(({ what, job, time }) => (what === 'job ends' ? [[job, time]] : [])),
    );
    const jobs = entries.flatMap(
      ({ what, job, time, part, pieces, rush, dueAt }): LoggedJobs['jobs'][number][] => {
        if (what !== 'job arrives') return [];
        const end = ends.get(job);
        return [
          {
            row: job + 2,
            name: null,
            asked: MONDAY + time,
            askedHasClock: true,
            part: part ?? '',
            quantity: pieces,
            process: null,
            material: null,
            rush,
            promised: dueAt === null ? null : MONDAY + dueAt,
            finished: end === undefined ? null : MONDAY + end,
            finishedHasClock: true,
            cancelled: false,
            isOpen: end === undefined,
            stages: [],
            stage: null,
            machine: null,
            requester: null,
          },
        ];
      },
    );
    const counted = { read: jobs.length, kept: jobs.length, troubles: [] };
    return { from: MONDAY, until: MONDAY + WEEKS * MILLISECONDS_PER_WEEK, jobs, counted };
  };
}
