import type { CurveFamily } from '@buildweek/statistics';
import type { GroupObservation, Observation } from './observation.ts';
import { type WeeksWithin, weeksWithin } from './weeks-within.ts';

/** Curves of the same kind of what happened (the first) and of each replication. */
interface Family {
  readonly what: string;
  readonly curves: CurveFamily;
}

/** What is tested, and where each number of it stands. */
export interface Families {
  readonly families: readonly Family[];
  readonly within: WeeksWithin;
  /** Judged weeks in which a job came, from 0. */
  readonly weeksWithJobs: readonly number[];
  /** What the numbers of the part types are, in the order of `PARTS`. */
  readonly partPlaces: readonly PartPlace[];
}

/** Positions of the families in their list. */
export const FINISHED = 0;
export const IN_LAB = 1;
export const LEAD_BY_WEEK = 2;
export const LEAD_TIMES = 3;
export const PARTS = 4;
export const PARTS_FINISHED = 5;
export const PARTS_IN_LAB = 6;
export const WITHIN = 7;

/** Of a part type: its position, and which number. */
export interface PartPlace {
  readonly part: number;
  readonly measure: 'leadTime' | 'p90' | 'onTime';
}

/**
 * Puts what happened and the replications side by side, as families of curves that weigh the same in the test.
 *
 * @param observations what happened first, then the replications; the same jobs in all of them
 */
export function familiesOf(observations: readonly Observation[]): Families {
  const [first] = observations;
  if (first === undefined) throw new RangeError('What happened is missing.');
  const weeksWithJobs = [...first.all.leadByWeek.keys()].filter(
    (week) => !Number.isNaN(first.all.leadByWeek[week]),
  );
  const partPlaces = first.parts.flatMap(placesOf);
  const finished = observations.map(({ all }) => all.finished);
  const inLab = observations.map(({ all }) => all.inLab);
  const leadByWeek = observations.map(({ all }) =>
    weeksWithJobs.map((week) => all.leadByWeek[week] ?? Number.NaN),
  );
  const within = weeksWithin([
    { curves: finished, weeks: [...(finished[0]?.keys() ?? [])] },
    { curves: inLab, weeks: [...(inLab[0]?.keys() ?? [])] },
    { curves: leadByWeek, weeks: weeksWithJobs },
  ]);
  const families = [
    { what: 'jobs finished a week', curves: finished },
    { what: 'jobs in the lab, week by week', curves: inLab },
    { what: 'lead times, by the week in which jobs came', curves: leadByWeek },
    {
      what: 'how lead times are spread, and the share on time',
      curves: observations.map(({ all }) => [...all.leadTimes, ...(all.onTime === null ? [] : [all.onTime])]),
    },
    {
      what: 'lead times and share on time of each part',
      curves: observations.map(({ parts }) =>
        partPlaces.map(({ part, measure }) => numberOf(parts[part], measure) ?? Number.NaN),
      ),
    },
    {
      what: 'jobs of each part finished a week',
      curves: observations.map(({ parts }) => parts.flatMap((part) => [...part.finished])),
    },
    {
      what: 'jobs of each part in the lab, week by week',
      curves: observations.map(({ parts }) => parts.flatMap((part) => [...part.inLab])),
    },
    { what: 'number of weeks as usual', curves: within.counts.map((count) => [count]) },
  ];
  return { families, within, weeksWithJobs, partPlaces };
}

function placesOf(observation: GroupObservation, part: number): PartPlace[] {
  const measures = ['leadTime', 'p90', 'onTime'] as const;
  return measures.flatMap((measure) =>
    observation.jobs > 0 && numberOf(observation, measure) !== null ? [{ part, measure }] : [],
  );
}

function numberOf(observation: GroupObservation | undefined, measure: PartPlace['measure']): number | null {
  if (observation === undefined) return null;
  return measure === 'leadTime' ? observation.meanLead : observation[measure];
}
