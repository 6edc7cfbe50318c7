import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { PartStretch, Timeline } from '@buildweek/results';
import type { LoneJob } from './lone-job.ts';

/** The way of a single piece, stretch by stretch, in hours since it was asked for. */
export function timelineOf(job: LoneJob, asked: string): Timeline {
  const { hours, peopleHours } = job;
  const story = job.story();
  const stretches = story.stretches
    .filter(({ kind, from, to }) => (kind === 'work' || kind === 'wait') && to > from)
    .map(
      ({ kind, stage, phase, persons, from, to }): PartStretch => ({
        stage,
        phase: phase as PartStretch['phase'],
        attended: persons.length > 0,
        kind: kind === 'wait' ? 'wait' : 'work',
        fromHour: (from - story.arrivedAt) / MILLISECONDS_PER_HOUR,
        toHour: (to - story.arrivedAt) / MILLISECONDS_PER_HOUR,
      }),
    );
  const sum = (isMeant: (stretch: PartStretch) => boolean): number =>
    stretches.filter(isMeant).reduce((total, { fromHour, toHour }) => total + toHour - fromHour, 0);
  return {
    asked,
    stretches,
    hours,
    attendedHours: peopleHours,
    unattendedHours: sum(({ kind, attended }) => kind === 'work' && !attended),
    closedHours: sum(({ kind }) => kind === 'wait'),
  };
}
