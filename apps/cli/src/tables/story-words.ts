import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import { formatNumber, type WaitCause } from '@buildweek/results';
import { type JobStory, MADE_OUTSIDE } from '@buildweek/study';

/** What a wait is for, behind "waits for". */
export const WAITS_FOR: Readonly<Record<WaitCause, string>> = {
  requester: 'the requester',
  'machine down': 'a repair',
  machine: 'a free machine or station',
  carrier: 'a carrier',
  batch: 'the batch to fill',
  shift: 'a shift',
  person: 'a person',
  'rest of the job': 'the rest of the job',
};

/** `3.25`, the hours of a number of milliseconds. */
export function hoursOf(milliseconds: number): string {
  return formatNumber(milliseconds / MILLISECONDS_PER_HOUR, 2);
}

/** What is done for a job: in the lab, or elsewhere. */
export function workOf({ stretches }: JobStory): string {
  return stretches.some(({ phase }) => phase === 'outside') ? MADE_OUTSIDE : 'work';
}

/** `4 pieces`. */
export function countOf(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

/** Jobs are numbered from 1 for people. */
export function jobNumber(job: number): number {
  return job + 1;
}

/** Whether a promise was kept, and by how much; empty without one, or when nothing is owed any more. */
export function promiseOf({ dueAt, until, outcome }: JobStory): 'kept' | 'missed' | 'open' | '' {
  if (dueAt === null || outcome === 'cancelled') return '';
  if (outcome === 'finished') return until <= dueAt ? 'kept' : 'missed';
  return until <= dueAt ? 'open' : 'missed';
}
