import { createLocalTime, createSimulator, MILLISECONDS_PER_HOUR, type Simulator } from '@buildweek/core';
import { type Lab, NO_CHANGES } from '@buildweek/model';
import { activitiesOf } from '../follow/activities.ts';
import { type JobStory, jobStoryOf } from '../follow/job-story.ts';

/** What became of a single job in an empty lab. */
export interface LoneJob {
  /** Hours by the clock from asking to the last finished piece. */
  readonly hours: number;
  /** Hours of people: two persons for an hour are two. */
  readonly peopleHours: number;
  readonly builds: number;
  readonly story: JobStory;
}

/** A longer plan costs more to play, so the short one is tried first. */
const PLANS_IN_WEEKS = [3, 12, 52];

/**
 * Makes a lab ready for one job that has it to itself.
 *
 * @param lab without demand of its own
 * @param part name of a part type of the lab
 * @param askedHour hours since Monday 00:00, local time
 */
export function loneJobSimulator(lab: Lab, part: string, quantity: number, askedHour: number): Simulator {
  const demand = [
    {
      name: part,
      part,
      arrivals: { kind: 'dated' as const, jobs: [{ atHour: askedHour, quantity, rush: false }] },
      quantity: { kind: 'fixed' as const, value: quantity },
      rushShare: 0,
      due: { kind: 'none' as const },
      rushDue: { kind: 'none' as const },
      changes: NO_CHANGES,
    },
  ];
  return createSimulator({ ...lab, demand });
}

/**
 * Plays the job.
 *
 * @param simulator as `loneJobSimulator` makes it
 * @returns null when it is not finished within a year
 */
export function playLoneJob(simulator: Simulator, seed: string, replication: number): LoneJob | null {
  for (const weeks of PLANS_IN_WEEKS) {
    const { trace, endedAt } = simulator.simulate({
      seed,
      replication,
      ignoredWeeks: 0,
      weeks: 1,
      capWeeks: weeks,
      trace: true,
      queueWaits: false,
    });
    const entries = trace ?? [];
    // An ordinary week has no clock changes.
    const localTime = createLocalTime([]);
    const story = jobStoryOf({ entries, replication, weeks, endedAt, localTime }, 0);
    if (story?.outcome !== 'finished') continue;
    const steps = activitiesOf(entries.filter((entry) => entry.job === 0));
    // Several loads of the job in one batch tell of the same hands.
    const handled = new Map<string, number>();
    const builds = new Set<string>();
    for (const { entry, from, to } of steps) {
      if (to === null) continue;
      if (entry.phase === 'print') builds.add(`${entry.unit} ${from}`);
      if (entry.persons.length === 0) continue;
      handled.set(`${entry.persons.join()} ${from} ${to}`, (to - from) * entry.persons.length);
    }
    const milliseconds = [...handled.values()].reduce((sum, time) => sum + time, 0);
    return {
      hours: (story.until - story.arrivedAt) / MILLISECONDS_PER_HOUR,
      peopleHours: milliseconds / MILLISECONDS_PER_HOUR,
      builds: builds.size,
      story,
    };
  }
  return null;
}
