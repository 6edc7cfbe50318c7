import { type History, HOURS_PER_WEEK, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { PERSON_STATES, SPEED_MEASURE, WAIT_CAUSES, type WaitCause } from '@buildweek/results';
import type { ReplicationMeasure } from '../plans/replication-measure.ts';
import { standardMeasures } from '../plans/standard-measures.ts';

/** Of the measures of every comparison, those that hours of people bear on. */
const SHARED: readonly string[] = [
  SPEED_MEASURE,
  'mean lead time',
  'nine of ten rush jobs within',
  'jobs on time',
  'rush jobs on time',
  'people at work',
  'wait for people',
];
/** What else a job waits for. */
const OTHER_WAITS: readonly string[] = ['wait for machines', 'wait for a build to fill'];

const OVERTIME = 'overtime of all people';
const RUNS_ALONE = 'machines run with nobody there';

/** What is looked at for each way of staffing, followed by what waits for whom in every hour of the week. */
export interface StaffMeasures {
  readonly all: readonly ReplicationMeasure[];
  /** So many of them, from the first, are told and compared. */
  readonly told: number;
  readonly skills: readonly string[];
}

/**
 * The measures of ways of staffing a lab; the same for all of them.
 *
 * @param lab as it is today
 */
export function staffMeasures(lab: Lab): StaffMeasures {
  const standard = standardMeasures([lab]);
  const shared = (names: readonly string[]): ReplicationMeasure[] =>
    names.flatMap((name) => standard.filter((measure) => measure.name === name));
  const told = [
    ...shared(SHARED),
    waiting('of that, while those who could are busy', 'person'),
    waiting('of that, until somebody who can comes in', 'shift'),
    ...shared(OTHER_WAITS),
    onDuty(),
    overtime(),
    ranAlone(),
  ];
  const skills = [...new Set(lab.people.flatMap((group) => group.skills))];
  return {
    all: [
      ...told,
      ...hoursOfWeek('people', isForPeople),
      ...skills.flatMap((skill) => hoursOfWeek(skill, isFor(skill))),
    ],
    told: told.length,
    skills,
  };
}

/** Position of the first hour of the week of everybody (-1) or of a skill among all measures. */
export function firstHourOf({ told }: StaffMeasures, skill: number): number {
  return told + (skill + 1) * HOURS_PER_WEEK;
}

/** Hours that a finished job has waited for this cause; each piece of it counts by its share. */
function waiting(name: string, cause: WaitCause): ReplicationMeasure {
  const position = WAIT_CAUSES.indexOf(cause);
  return {
    name,
    unit: 'hours',
    better: 'lower',
    of: ({ partHours }) => {
      let waited = 0;
      let jobs = 0;
      for (const { waits, steps, finishedJobs } of partHours) {
        jobs += finishedJobs;
        for (let step = 0; step < steps.length; step++) {
          waited += waits[step * WAIT_CAUSES.length + position] ?? 0;
        }
      }
      return [waited / MILLISECONDS_PER_HOUR, jobs];
    },
  };
}

function overtime(): ReplicationMeasure {
  return perWeek(OVERTIME, 'lower', (history) => inStates(history, ['overtime']));
}

function onDuty(): ReplicationMeasure {
  return perWeek('people on duty', 'neither', (history) =>
    inStates(history, ['work', 'other duties', 'idle']),
  );
}

function ranAlone(): ReplicationMeasure {
  return perWeek(RUNS_ALONE, 'neither', ({ machines }) =>
    machines.reduce((sum, unit) => sum + unit.ranAlone, 0),
  );
}

/** @param time milliseconds of one replication */
function perWeek(
  name: string,
  better: ReplicationMeasure['better'],
  time: (history: History) => number,
): ReplicationMeasure {
  return {
    name,
    unit: 'hours per week',
    better,
    of: (history) => [time(history) / MILLISECONDS_PER_HOUR, history.weeks.jobsInLab.length],
  };
}

/** Milliseconds that all people together spent in some states. */
function inStates({ people }: History, states: readonly (typeof PERSON_STATES)[number][]): number {
  const positions = states.map((state) => PERSON_STATES.indexOf(state));
  let sum = 0;
  for (const { timeInState } of people) {
    timeInState.forEach((time, index) => {
      if (positions.includes(index % PERSON_STATES.length)) sum += time;
    });
  }
  return sum;
}

type QueueFilter = (queue: History['queues'][number]) => boolean;

const isForPeople: QueueFilter = ({ kind }) => kind === 'people';

/** Queues of work for one person with a skill, and for several of them. */
function isFor(skill: string): QueueFilter {
  return ({ kind, name }) =>
    kind === 'people' &&
    (name === skill || (name.startsWith(skill) && /^ \(\d+ persons\)$/.test(name.slice(skill.length))));
}

/** Mean number of jobs that wait in some queues in each hour of the week, one measure for each hour. */
function hoursOfWeek(what: string, queues: QueueFilter): ReplicationMeasure[] {
  return Array.from({ length: HOURS_PER_WEEK }, (_, hour) => ({
    name: `waiting for ${what}, hour ${hour} of the week`,
    unit: 'jobs' as const,
    better: 'lower' as const,
    of: (history: History) => {
      let length = 0;
      for (const queue of history.queues) if (queues(queue)) length += queue.byHourOfWeek[hour] ?? 0;
      return [length, 1] as const;
    },
  }));
}
