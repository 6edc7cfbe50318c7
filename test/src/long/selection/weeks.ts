import type { History } from '@buildweek/core';
import { formatProblem, readScenario } from '@buildweek/scenario';
import { createInProcessExecutor, ObservedPlans, type Plan, type ReplicationMeasure } from '@buildweek/study';
import { IGNORED_WEEKS, PLANS, scenarioOf, WEEKS, WITHIN_HOURS } from './problem.ts';

const MILLISECONDS_PER_HOUR = 3_600_000;

/** Sums of one replication: hours of all jobs, jobs that took longer than allowed, jobs. */
export interface PlayedWeeks {
  readonly hours: number;
  readonly late: number;
  readonly jobs: number;
}

const MEASURES: readonly ReplicationMeasure[] = [
  { name: 'mean lead time', unit: 'hours', better: 'lower', of: hoursAndJobs },
  { name: 'late', unit: 'share', better: 'lower', of: lateAndJobs },
];

function hoursAndJobs({ jobClasses }: History): [number, number] {
  const times = jobClasses.flatMap(({ leadTimes, unfinished }) =>
    // Hours that are not over yet are not known.
    unfinished > 0 ? [Number.POSITIVE_INFINITY] : [...leadTimes],
  );
  return [times.reduce((sum, time) => sum + time, 0) / MILLISECONDS_PER_HOUR, times.length];
}

function lateAndJobs({ jobClasses }: History): [number, number] {
  const times = jobClasses.flatMap(({ leadTimes }) => [...leadTimes]);
  return [times.filter((time) => time > WITHIN_HOURS * MILLISECONDS_PER_HOUR).length, times.length];
}

/** Plays the plans of the problem on one seed: replication r of each of them has the same arrivals and draws. */
export class Weeks {
  private readonly plans: readonly Plan[];
  private readonly observed: ObservedPlans;

  constructor(plans: readonly Plan[], seed: string) {
    this.plans = plans;
    this.observed = new ObservedPlans({
      measures: () => MEASURES,
      template: {
        seed,
        ignoredWeeks: IGNORED_WEEKS,
        weeks: WEEKS,
        capWeeks: 1,
        trace: false,
        queueWaits: false,
      },
      executor: createInProcessExecutor(),
    });
  }

  /** Replications `from` up to, without, `to`. */
  async play(plan: number, from: number, to: number): Promise<PlayedWeeks[]> {
    const observations = await this.observed.observe(this.plans[plan] as Plan, to);
    if (observations === null) throw new Error('It was stopped.');
    return observations.slice(from).map(([hours = 0, jobs = 0, late = 0]) => ({ hours, late, jobs }));
  }
}

/** @throws Error when a scenario has problems */
export function readPlans(): Plan[] {
  return PLANS.map(({ name }, plan) => {
    const reading = readScenario(scenarioOf(plan), `${name}.yaml`);
    if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
    return { name, lab: reading.lab };
  });
}
