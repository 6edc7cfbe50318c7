import type { RunColumn } from '../columns/columns.ts';
import type { RunPlan } from '../columns/run-plan.ts';
import type { Moment, TableDates } from '../dates/table-dates.ts';
import type { MachineRun } from '../logged-jobs.ts';
import type { MachineMapping } from '../mapping/mapping.ts';
import type { RowCounts, RowTrouble } from '../row-counts.ts';
import type { TableRow } from '../table-row.ts';
import { says } from './answer-words.ts';
import { cleanText, isFormula } from './clean-text.ts';
import { rowHash } from './row-hash.ts';
import { TroubleCounter } from './trouble-counter.ts';

/** The runs of machines, and what became of the rows of their record. */
export interface ReadRuns {
  /** In the order in which they began. */
  readonly runs: readonly MachineRun[];
  readonly counted: RowCounts;
}

/** Makes runs of the rows of a machine's record. */
export class RunRows {
  private readonly plan: RunPlan;
  private readonly dates: TableDates;
  private readonly mapping: MachineMapping;
  private readonly troubles = new TroubleCounter();
  private readonly runs: MachineRun[] = [];
  private readonly seen = new Set<number>();
  private readonly machines = new Map<string, string>();
  private read = 0;

  constructor(plan: RunPlan, dates: TableDates, mapping: MachineMapping) {
    this.plan = plan;
    this.dates = dates;
    this.mapping = mapping;
  }

  take(row: TableRow): void {
    this.read++;
    const run = this.runOf(row);
    if (typeof run === 'string') this.troubles.add(run, row.line);
    else this.runs.push(run);
  }

  finish(): ReadRuns {
    const last = new Map<string, number>();
    for (const { machine, start } of this.runs)
      last.set(machine, Math.max(last.get(machine) ?? start, start));
    // A run without an end that has another behind it ended at a time that nobody wrote down.
    const kept = this.runs.filter(({ machine, start, end, row }) => {
      const isLost = end === null && start < (last.get(machine) ?? start);
      if (isLost) this.troubles.add('run without an end', row);
      return !isLost;
    });
    kept.sort((a, b) => a.start - b.start || a.row - b.row);
    return { runs: kept, counted: { read: this.read, kept: kept.length, troubles: this.troubles.all() } };
  }

  /** The run of a row, or why there is none. */
  private runOf({ line, cells }: TableRow): MachineRun | RowTrouble {
    const machine = this.text('machine', cells, line);
    if (machine === null) return 'empty';
    const hash = rowHash(cells);
    if (this.seen.has(hash)) return 'duplicate';
    this.seen.add(hash);
    const start = this.moment('start', cells, line);
    if (start === null) return 'no date';
    const end = this.moment('end', cells, line);
    if (end !== null && end.at < start.at) return 'run ends before it starts';
    return {
      row: line,
      machine: this.spelling(machine),
      start: start.at,
      end: end?.at ?? null,
      outcome: this.outcomeOf(cells, line, end !== null),
      material: this.text('material', cells, line),
      job: this.text('job', cells, line),
    };
  }

  private outcomeOf(cells: readonly string[], line: number, hasEnded: boolean): MachineRun['outcome'] {
    const cell = this.cell('outcome', cells);
    const { doneMeans, failedMeans, brokeDownMeans } = this.mapping;
    if (!hasEnded) return 'running';
    if (says(cell, 'failed', failedMeans)) return 'failed';
    if (says(cell, 'brokeDown', brokeDownMeans)) return 'broke down';
    const isKnown = cell === '' || says(cell, 'succeeded', doneMeans) || says(cell, 'running');
    if (!isKnown) this.troubles.add('unknown outcome', line);
    return 'done';
  }

  /** One machine has one name, however it is capitalized. */
  private spelling(machine: string): string {
    const key = machine.toLowerCase();
    const first = this.machines.get(key);
    if (first !== undefined) return first;
    this.machines.set(key, machine);
    return machine;
  }

  private cell(column: RunColumn, cells: readonly string[]): string {
    const place = this.plan.places[column];
    return place === undefined ? '' : (cells[place.position] ?? '').trim();
  }

  private text(column: RunColumn, cells: readonly string[], line: number): string | null {
    const cell = this.cell(column, cells);
    if (isFormula(cell)) this.troubles.add('formula', line);
    return cleanText(cell);
  }

  private moment(column: 'start' | 'end', cells: readonly string[], line: number): Moment | null {
    const cell = this.cell(column, cells);
    if (cell === '') return null;
    const moment = this.dates.read(cell, true);
    if (moment === null) this.troubles.add('unreadable date', line);
    else if (moment.trouble !== null) this.troubles.add(moment.trouble, line);
    return moment;
  }
}
