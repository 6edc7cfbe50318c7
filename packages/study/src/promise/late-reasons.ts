import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import { type Lab, type Step, stepsOf } from '@buildweek/model';
import { joinWords, WAIT_CAUSES, type WaitCause } from '@buildweek/results';
import { clockWords } from '../part/clock-words.ts';
import type { LabMoments } from './lab-moments.ts';
import type { PlayedJobs } from './play-jobs.ts';

/** A job that keeps its promise at least this often is not said to be at risk. */
export const SAFE_SHARE = 0.9;
const MOST_TOLD = 3;
/** Hours of a wait or of work that are worth a word. */
const LEAST_HOURS = 0.25;

const CAUSES: Readonly<Record<WaitCause, string>> = {
  requester: 'for the requester',
  'machine down': 'for a repair',
  machine: 'for a free machine or station',
  carrier: 'for a carrier',
  batch: 'for the build or batch to fill',
  shift: 'for somebody to come',
  person: 'for somebody to be free',
  'rest of the job': 'for the rest of the job',
};

/**
 * Why a job may miss its promise: what is left to do beside the time that is left, and where it waits in the plays in
 * which it is late.
 *
 * @param due elapsed milliseconds
 * @returns nothing when at least nine in ten plays keep the promise
 */
export function lateReasons(
  lab: Lab,
  position: number,
  due: number,
  { jobs }: PlayedJobs,
  moments: LabMoments,
): string[] {
  const plays = jobs.map((followed) => followed[position]);
  const late = plays.filter((play) => play === undefined || play.endedAt > due);
  if (plays.length - late.length >= SAFE_SHARE * plays.length) return [];
  const stream = lab.initialState.jobs[position]?.stream;
  const partName = lab.demand.find(({ name }) => name === stream)?.part;
  const part = lab.parts.find(({ name }) => name === partName);
  if (part === undefined) return [];
  const steps = stepsOf(part, lab.machines);
  const finished = late.flatMap((play) =>
    play?.work === undefined || play.waits === undefined ? [] : [play],
  );
  const left = due - moments.now;
  const time =
    left <= 0
      ? `It was due ${clockWords(-left / MILLISECONDS_PER_HOUR)} ago`
      : `It is due in ${clockWords(left / MILLISECONDS_PER_HOUR)} by the clock`;
  if (finished.length === 0)
    return [`${time}; where it is late, it is not finished in the weeks looked ahead.`];
  const mean = (value: (play: (typeof finished)[number]) => number): number =>
    finished.reduce((sum, play) => sum + value(play), 0) / finished.length / MILLISECONDS_PER_HOUR;
  const work = mean(({ work: times }) => times?.reduce((sum, one) => sum + one, 0) ?? 0);
  const waits = steps.flatMap((step, index) =>
    WAIT_CAUSES.map((cause, at) => ({
      words: `${clockWords(mean(({ waits: times }) => times?.[index * WAIT_CAUSES.length + at] ?? 0))} ${CAUSES[cause]} ${placeOf(step)}`,
      hours: mean(({ waits: times }) => times?.[index * WAIT_CAUSES.length + at] ?? 0),
    })),
  );
  const told = waits
    .filter(({ hours }) => hours >= LEAST_HOURS)
    .sort((a, b) => b.hours - a.hours)
    .slice(0, MOST_TOLD);
  const waiting =
    told.length === 0 ? '' : `; where it is late, it waits ${joinWords(told.map(({ words }) => words))}`;
  return [`${time}, and ${clockWords(work)} of work on it are left${waiting}.`];
}

function placeOf({ stage, phase }: Step): string {
  return phase === 'work' || phase === 'wait' || phase === 'outside' || phase === 'run' || phase === 'print'
    ? `before ${stage}`
    : `before ${phase} of ${stage}`;
}
