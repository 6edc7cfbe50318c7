import type { Mapping } from '../mapping/mapping.ts';
import { mappedColumns, missingColumn, placeOf } from './choose-columns.ts';
import type { ColumnPlace, JobColumn, Places, StagePlaces } from './columns.ts';
import { guessJobColumns } from './guess-columns.ts';
import { guessStages } from './guess-stages.ts';
import type { TableHead } from './table-head.ts';

/** What is known of the columns of a list of requests. */
export interface JobPlan {
  readonly headerLine: number;
  readonly headings: readonly string[];
  readonly places: Places<JobColumn>;
  readonly stages: readonly StagePlaces[];
  /** Headings of columns that are not used. */
  readonly unused: readonly string[];
  /** Columns of dates. */
  readonly datePositions: readonly number[];
  /** Columns whose dates have clocks. */
  readonly clockPositions: ReadonlySet<number>;
}

/**
 * Which column is what: as the mapping says, and guessed where it says nothing.
 * @throws TableProblem when the mapping names what is not there, or nothing tells when or what was asked for
 */
export function jobPlan(head: TableHead, mapping: Mapping): JobPlan {
  const { headings, profiles } = head;
  const mapped = mappedColumns<JobColumn>(mapping.columns ?? {}, head);
  const mappedStages = mapping.stages?.map(({ name, start, end, isWork }) => ({
    name,
    start: start === undefined ? null : placeOf(start, `the start of ${name}`, head),
    end: end === undefined ? null : placeOf(end, `the end of ${name}`, head),
    isWork,
  }));
  const taken = positionsOf([...Object.values(mapped.places), ...(mappedStages ?? []).flatMap(endsOf)]);
  const guessed = guessJobColumns(headings, profiles, taken);
  const places: Partial<Record<JobColumn, ColumnPlace>> = {};
  for (const [column, place] of Object.entries(guessed) as [JobColumn, ColumnPlace][]) {
    if (!mapped.none.has(column)) places[column] = place;
  }
  Object.assign(places, mapped.places);
  if (places.asked === undefined) throw missingColumn('asked', head, 'when a request came in');
  if (places.part === undefined && !mapped.none.has('part')) {
    throw missingColumn('part', head, 'which part was asked for');
  }
  const usedByJobs = positionsOf([...Object.values(places), ...(mappedStages ?? []).flatMap(endsOf)]);
  const stages = mappedStages ?? guessStages(headings, profiles, usedByJobs);
  const used = positionsOf([...Object.values(places), ...stages.flatMap(endsOf)]);
  const { asked, promised, finished } = places;
  const datePositions = [
    ...positionsOf(
      [asked, promised, finished, ...stages.flatMap(endsOf)].filter((place) => place !== undefined),
    ),
  ];
  return {
    headerLine: head.line,
    headings,
    places,
    stages,
    unused: headings.filter((heading, position) => heading !== '' && !used.has(position)),
    datePositions,
    clockPositions: new Set(datePositions.filter((position) => (profiles[position]?.clocks ?? 0) > 0)),
  };
}

function endsOf({ start, end }: StagePlaces): ColumnPlace[] {
  return [start, end].filter((place) => place !== null);
}

function positionsOf(places: readonly ColumnPlace[]): Set<number> {
  return new Set(places.map(({ position }) => position));
}
