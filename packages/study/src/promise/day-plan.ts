import type { Lab } from '@buildweek/model';
import type { PlannedStart, PromiseDay } from '@buildweek/results';
import type { LabMoments } from './lab-moments.ts';
import type { DayEnd } from './lab-opening.ts';
import { overnightOf } from './overnight.ts';
import { jobName } from './promise-question.ts';
import { type PlayedDay, type TypicalStart, typicalDay } from './typical-day.ts';

/** Share of the plays that have started a build by the time that it is to be started by. */
const STARTED = 0.9;

/**
 * What to start on which machine before the lab opens again, and what stands until then.
 *
 * @param machines names of all machines
 * @param days one for each play
 */
export function dayPlan(
  lab: Lab,
  machines: Iterable<string>,
  days: readonly PlayedDay[],
  dayEnd: DayEnd,
  moments: LabMoments,
): PromiseDay {
  const { jobs } = lab.initialState;
  const { starts } = typicalDay(days, jobs.length, groupOf);
  const partOf = (job: number): string => {
    const stream = jobs[job]?.stream ?? '';
    return lab.demand.find(({ name }) => name === stream)?.part ?? stream;
  };
  return {
    closes: moments.moment(dayEnd.closes),
    opens: moments.moment(dayEnd.opens),
    starts: starts.map(
      (start): PlannedStart => ({
        machine: start.build.machine,
        jobs: start.build.jobs
          .filter(({ job }) => job < jobs.length)
          .map(({ job, pieces }) => ({ job: jobName(jobs, job), part: partOf(job), pieces })),
        start: moments.moment(start.build.startedAt),
        startBy: moments.moment(startedBy(start)),
        by: [...start.build.persons],
        share: start.inGroup / days.length,
        shareOnMachine: start.onMachine / days.length,
      }),
    ),
    overnight: overnightOf(lab, machines, days, dayEnd, moments),
  };
}

/** Machines are called by their group and a number. */
function groupOf(machine: string): string {
  return machine.replace(/ \d+$/, '');
}

/** The time by which nine in ten of the plays that start it have done so. */
function startedBy({ startTimes, build }: TypicalStart): number {
  return startTimes[Math.ceil(STARTED * startTimes.length) - 1] ?? build.startedAt;
}
