import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { EstimateOrRefused, PromisedRequest, PromiseEffect } from '@buildweek/results';
import type { LabMoments } from './lab-moments.ts';
import { endingsOf, type PlayedJobs } from './play-jobs.ts';
import { jobName } from './promise-question.ts';
import { chanceBy, meanOver } from './promised-dates.ts';

/**
 * What a decision does to the jobs that stand in the lab, by two plays of each on the same random numbers; those that
 * lose most chance of being on time come first.
 *
 * @param lab whose jobs they are
 */
export function effectsBetween(
  lab: Lab,
  before: PlayedJobs,
  after: PlayedJobs,
  moments: LabMoments,
): Pick<PromisedRequest, 'effects' | 'jobsLate'> {
  const { jobs } = lab.initialState;
  const moreLate = new Array<number>(before.jobs.length).fill(0);
  let isAnyPromised = false;
  const effects = jobs.map((job, position): PromiseEffect => {
    const first = endingsOf(before, position);
    const second = endingsOf(after, position);
    const due = job.dueAtHour === null ? null : moments.elapsed(job.dueAtHour);
    if (due !== null) {
      isAnyPromised = true;
      first.forEach((ended, index) => {
        const isLate = (time: number): number => (time > due ? 1 : 0);
        moreLate[index] = (moreLate[index] ?? 0) + isLate(second[index] ?? 0) - isLate(ended);
      });
    }
    return {
      job: jobName(jobs, position),
      part: lab.demand.find(({ name }) => name === job.stream)?.part ?? job.stream,
      quantity: job.quantity,
      rush: job.rush,
      due: due === null ? null : moments.moment(due),
      onTimeBefore: due === null ? null : chanceBy(first, due),
      onTimeAfter: due === null ? null : chanceBy(second, due),
      hoursLater: meanOver(second.map((ended, index) => hoursLater(ended, first[index] ?? 0))),
    };
  });
  const hurt = (effect: PromiseEffect): number => valueIn(effect.onTimeBefore) - valueIn(effect.onTimeAfter);
  effects.sort((a, b) => hurt(b) - hurt(a) || valueIn(b.hoursLater) - valueIn(a.hoursLater));
  return { effects, jobsLate: isAnyPromised ? meanOver(moreLate) : null };
}

function valueIn(estimate: EstimateOrRefused | null): number {
  return estimate?.kind === 'estimate' ? estimate.value : 0;
}

/** Hours by which something ends later; two that are never finished are equally late. */
export function hoursLater(ended: number, before: number): number {
  return ended === before ? 0 : (ended - before) / MILLISECONDS_PER_HOUR;
}
