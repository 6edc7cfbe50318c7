import {
  createLocalTime,
  createSimulator,
  MILLISECONDS_PER_HOUR,
  type Simulator,
  type TraceEntry,
} from '@buildweek/core';
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
  /** Where it was, step by step. */
  readonly story: () => JobStory;
}

/** A longer plan costs more to play, so the short one is tried first. */
const PLANS_IN_WEEKS = [3, 12, 52];

/** Plays one job that has a lab to itself. */
export class LoneJobPlayer {
  private readonly simulator: Simulator;

  /**
   * @param lab without demand of its own
   * @param part name of a part type of the lab
   * @param askedHour hours since Monday 00:00, local time
   */
  constructor(lab: Lab, part: string, quantity: number, askedHour: number) {
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
        sentOut: null,
      },
    ];
    this.simulator = createSimulator({ ...lab, demand });
  }

  /** @returns null when it is not finished within a year */
  play(seed: string, replication: number): LoneJob | null {
    for (const weeks of PLANS_IN_WEEKS) {
      const { trace, endedAt } = this.simulator.simulate({
        seed,
        replication,
        ignoredWeeks: 0,
        weeks: 1,
        capWeeks: weeks,
        trace: true,
        queueWaits: false,
      });
      const entries = (trace ?? []).filter(({ job }) => job === 0);
      const arrival = entries.find(({ what }) => what === 'job arrives');
      const end = entries.findLast(({ what }) => what === 'job ends');
      if (arrival === undefined || end === undefined) continue;
      return {
        hours: (end.time - arrival.time) / MILLISECONDS_PER_HOUR,
        ...workOn(entries),
        story: () => storyOf(entries, weeks, endedAt),
      };
    }
    return null;
  }
}

function workOn(entries: readonly TraceEntry[]): Pick<LoneJob, 'peopleHours' | 'builds'> {
  // Several loads of the job in one batch tell of the same hands.
  const handled = new Map<string, number>();
  const builds = new Set<string>();
  for (const { entry, from, to } of activitiesOf(entries)) {
    if (to === null) continue;
    if (entry.phase === 'print') builds.add(`${entry.unit} ${from}`);
    if (entry.persons.length === 0) continue;
    handled.set(`${entry.persons.join()} ${from} ${to}`, (to - from) * entry.persons.length);
  }
  const milliseconds = [...handled.values()].reduce((sum, time) => sum + time, 0);
  return { peopleHours: milliseconds / MILLISECONDS_PER_HOUR, builds: builds.size };
}

function storyOf(entries: readonly TraceEntry[], weeks: number, endedAt: number): JobStory {
  // An ordinary week has no clock changes.
  const localTime = createLocalTime([]);
  const story = jobStoryOf({ entries, states: [], replication: 0, weeks, endedAt, localTime }, 0);
  if (story === null) throw new Error('The job has left no trace.');
  return story;
}
