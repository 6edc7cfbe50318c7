import type { MachineMapping } from '../mapping/mapping.ts';
import { mappedColumns, missingColumn } from './choose-columns.ts';
import type { ColumnPlace, Places, RunColumn } from './columns.ts';
import { guessRunColumns } from './guess-columns.ts';
import type { TableHead } from './table-head.ts';

/** What is known of the columns of a machine's record. */
export interface RunPlan {
  readonly headerLine: number;
  readonly headings: readonly string[];
  readonly places: Places<RunColumn>;
  readonly unused: readonly string[];
  readonly datePositions: readonly number[];
}

/** @throws TableProblem when the mapping names what is not there, or machine, start or end are missing */
export function runPlan(head: TableHead, mapping: MachineMapping): RunPlan {
  const { headings, profiles } = head;
  const mapped = mappedColumns<RunColumn>(mapping.columns ?? {}, head);
  const taken = new Set(Object.values(mapped.places).map(({ position }) => position));
  const places: Partial<Record<RunColumn, ColumnPlace>> = {};
  const guessed = guessRunColumns(headings, profiles, taken);
  for (const [column, place] of Object.entries(guessed) as [RunColumn, ColumnPlace][]) {
    if (!mapped.none.has(column)) places[column] = place;
  }
  Object.assign(places, mapped.places);
  if (places.machine === undefined) throw missingColumn('machine', head, 'which machine ran');
  if (places.start === undefined) throw missingColumn('start', head, 'when a run began');
  if (places.end === undefined) throw missingColumn('end', head, 'when a run ended');
  const used = new Set(Object.values(places).map(({ position }) => position));
  return {
    headerLine: head.line,
    headings,
    places,
    unused: headings.filter((heading, position) => heading !== '' && !used.has(position)),
    datePositions: [places.start.position, places.end.position],
  };
}
