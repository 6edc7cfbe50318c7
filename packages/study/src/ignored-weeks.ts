import type { SimulationSettings } from '@buildweek/core';
import type { Lab, StudySettings } from '@buildweek/model';
import type { IgnoredWeeks } from '@buildweek/results';
import { mser, RunningMeans } from '@buildweek/statistics';
import type { ReplicationExecutor, StopSignal } from './executor.ts';
import { inOrder } from './in-order.ts';

/** A pilot is at least this long, so that the end of a slow start can be seen at all. */
const PILOT_WEEKS = 52;
const PILOT_REPLICATIONS = 20;

/** How many weeks are left out, and what has to be said about it. */
export interface IgnoredWeeksChoice {
  readonly ignoredWeeks: IgnoredWeeks;
  readonly warnings: readonly string[];
}

/**
 * Decides how many weeks are left out before the stated start: none where the lab starts from a stated backlog; the
 * stated number; none where it plays a dated list of jobs; or what MSER cuts off the weekly number of jobs in the lab,
 * averaged over a pilot with random numbers of its own.
 * @returns null when somebody stopped before the pilot was finished
 */
export async function decideIgnoredWeeks(
  lab: Lab,
  settings: StudySettings,
  executor: ReplicationExecutor,
  onReplication: (done: number, total: number) => void,
  stop: StopSignal | null,
): Promise<IgnoredWeeksChoice | null> {
  const given = settings.ignoredWeeks === 'auto' ? null : settings.ignoredWeeks;
  const { jobs, machines, atHour = 0 } = lab.initialState;
  if (jobs.length > 0 || machines.length > 0 || atHour > 0) {
    return {
      ...choice(
        0,
        'starts from the stated backlog',
        'The plan starts with what stands in the lab; no week is left out.',
      ),
      warnings: backlogWarning(given ?? 0),
    };
  }
  if (given !== null) {
    return choice(given, 'given', `The scenario or the command says ${inWeeks(given)}.`);
  }
  if (lab.demand.every((stream) => stream.arrivals.kind === 'dated')) {
    return choice(0, 'given', 'All jobs come from a dated list, which is played from its start.');
  }
  const weeks = Math.max(PILOT_WEEKS, settings.weeks);
  const means = new RunningMeans(weeks);
  const histories = executor.run(steadyLab(lab), pilotSettings(settings.seed, weeks), stop);
  for await (const history of inOrder(histories, 0)) {
    means.add(history.weeks.jobsInLab);
    onReplication(means.replications, PILOT_REPLICATIONS);
  }
  if (means.replications < PILOT_REPLICATIONS) return null;
  const { cut, inSecondHalf } = mser(Float64Array.from({ length: weeks }, (_, week) => means.mean(week)));
  return {
    ...choice(
      cut,
      'chosen by MSER',
      `MSER on the weekly number of jobs in the lab, averaged over a pilot of ${PILOT_REPLICATIONS} replications of ${inWeeks(weeks)}, without closed days and growth.`,
    ),
    warnings: secondHalfWarning(inSecondHalf, weeks),
  };
}

function choice(weeks: number, method: IgnoredWeeks['method'], note: string): IgnoredWeeksChoice {
  return { ignoredWeeks: { weeks, method, note }, warnings: [] };
}

/** What stands in the lab stands there at the stated start: weeks before it would play it at another date. */
function backlogWarning(asked: number): string[] {
  if (asked === 0) return [];
  return [
    `The plan starts with what stands in the lab, so no week can lie before it: the ${inWeeks(asked)} to ignore are not played.`,
  ];
}

function secondHalfWarning(inSecondHalf: boolean, weeks: number): string[] {
  if (!inSecondHalf) return [];
  return [
    `The pilot of ${inWeeks(weeks)} does not settle: MSER would cut in its second half. The lab may be overloaded, or need more weeks to fill; state the ignored weeks yourself, or start from a backlog.`,
  ];
}

/**
 * The lab as it is in every week alike: without growth, closed days, windows on single dates and leave, in whose
 * wake MSER would look for the end of the start.
 */
function steadyLab(lab: Lab): Lab {
  return {
    ...lab,
    calendars: lab.calendars.map((calendar) => ({
      ...calendar,
      closedDays: [],
      extra: calendar.weekly.length === 0 ? calendar.extra : [],
    })),
    people: lab.people.map((group) => ({ ...group, leave: [] })),
    demand: lab.demand.map((stream) =>
      stream.arrivals.kind === 'poisson'
        ? { ...stream, arrivals: { ...stream.arrivals, growthPerMonth: 0 } }
        : stream,
    ),
  };
}

/** The pilot has random numbers of its own, so that what is cut does not depend on what is measured. */
function pilotSettings(seed: string, weeks: number): SimulationSettings[] {
  return Array.from({ length: PILOT_REPLICATIONS }, (_, replication) => ({
    seed: `${seed} pilot`,
    replication,
    ignoredWeeks: 0,
    weeks,
    capWeeks: 0,
    trace: false,
    queueWaits: false,
  }));
}

function inWeeks(weeks: number): string {
  return weeks === 1 ? '1 week' : `${weeks} weeks`;
}
