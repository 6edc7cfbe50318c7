import type { JobColumn, StagePlaces } from '../columns/columns.ts';
import type { JobPlan } from '../columns/job-plan.ts';
import type { Moment, TableDates } from '../dates/table-dates.ts';
import type { LoggedJob, LoggedJobs, LoggedStage } from '../logged-jobs.ts';
import type { Mapping } from '../mapping/mapping.ts';
import { TableProblem } from '../table-problem.ts';
import type { TableRow } from '../table-row.ts';
import { readNumber } from '../text/read-number.ts';
import { says } from './answer-words.ts';
import { cleanText, isFormula } from './clean-text.ts';
import { type LogPeriod, logPeriod } from './log-period.ts';
import { PartBook, type PartNames } from './part-names.ts';
import { PriorityWords, type SeenPriority } from './priority-words.ts';
import { remembered } from './remembered.ts';
import { rowHash } from './row-hash.ts';
import { TroubleCounter } from './trouble-counter.ts';

const DAY = 86_400_000;
/** The last minute of a day. */
const END_OF_DAY = DAY - 60_000;
/** What a part is called that has no name. */
const UNNAMED = 'unnamed part';

/** The requests of a log, and what was made of its words. */
export interface ReadJobs extends LoggedJobs {
  readonly names: PartNames;
  readonly priorities: readonly SeenPriority[];
}

export interface JobRowOptions {
  readonly mapping: Mapping;
  readonly dates: TableDates;
  /** Names of parts that a scenario has. */
  readonly knownParts: readonly string[];
  readonly keepsRequesters: boolean;
}

/** What a cell of the column of states says. */
interface StatusWords {
  readonly cancelled: boolean;
  readonly done: boolean;
  readonly open: boolean;
}

type MutableJob = { -readonly [Key in keyof LoggedJob]: LoggedJob[Key] };

/** Makes jobs of the rows of a table, one row after the other. */
export class JobRows {
  private readonly plan: JobPlan;
  private readonly options: JobRowOptions;
  private readonly troubles = new TroubleCounter();
  private readonly parts: PartBook;
  private readonly priorities: PriorityWords;
  private readonly jobs: MutableJob[] = [];
  private readonly seen = new Set<number>();
  /** Places of jobs by a hash of their number and part. */
  private readonly byName = new Map<number, number>();
  private readonly clean = remembered((cell) => ({ text: cleanText(cell), isFormula: isFormula(cell) }));
  private readonly statusOf: (cell: string) => StatusWords;
  /** Two rows alike are one request told twice only where a number or a clock would tell two apart. */
  private readonly tellsApart: boolean;
  private read = 0;

  constructor(plan: JobPlan, options: JobRowOptions) {
    this.plan = plan;
    this.options = options;
    this.parts = new PartBook(options.mapping.parts ?? {}, options.knownParts);
    this.priorities = new PriorityWords(options.mapping.rushMeans);
    this.statusOf = remembered((cell) => ({
      cancelled: says(cell, 'cancelled', options.mapping.cancelledMeans),
      done: says(cell, 'done'),
      open: says(cell, 'open'),
    }));
    const { asked, job } = plan.places;
    this.tellsApart = job !== undefined || (asked !== undefined && plan.clockPositions.has(asked.position));
  }

  take({ line, cells }: TableRow): void {
    this.read++;
    if (!this.isFilled(cells)) {
      this.troubles.add('empty', line);
      return;
    }
    if (cells.slice(this.plan.headings.length).some((cell) => cell.trim() !== '')) {
      this.troubles.add('too many cells', line);
    }
    const hash = rowHash(cells);
    if (this.seen.has(hash)) {
      this.troubles.add(this.tellsApart ? 'duplicate' : 'possible duplicate', line);
      if (this.tellsApart) return;
    }
    this.seen.add(hash);
    const asked = this.moment('asked', cells, line, 'no date');
    if (asked !== null) this.keep(this.jobOf(cells, line, asked), line);
  }

  /** @throws TableProblem when no row became a job */
  finish(): ReadJobs {
    if (this.jobs.length === 0) throw this.nothingKept();
    const { nameOf, names } = this.parts.names();
    const period: LogPeriod = logPeriod(this.jobs);
    const kept = this.jobs.filter((job) => {
      const isInside = job.asked >= period.from && job.asked < period.until;
      if (!isInside) this.troubles.add('outside the period', job.row);
      return isInside;
    });
    for (const job of kept) {
      job.part = nameOf.get(job.part) ?? job.part;
      if (job.finished !== null && job.finished > period.until) {
        this.troubles.add('outside the period', job.row);
        job.finished = null;
      }
      if (job.isOpen) this.troubles.add('open', job.row);
      if (job.cancelled) this.troubles.add('cancelled', job.row);
    }
    kept.sort((a, b) => a.asked - b.asked || a.row - b.row);
    return {
      from: period.from,
      until: period.until,
      jobs: kept,
      counted: { read: this.read, kept: kept.length, troubles: this.troubles.all() },
      names,
      priorities: this.priorities.seen(),
    };
  }

  private jobOf(cells: readonly string[], line: number, asked: Moment): MutableJob {
    const { places } = this.plan;
    const status = this.cell('status', cells);
    const { cancelled, done, open } = this.statusOf(status);
    const finish = this.moment('finished', cells, line, null);
    const finishedAt = finish === null ? null : endOf(finish);
    const isBefore = finishedAt !== null && finishedAt < asked.at;
    if (isBefore) this.troubles.add('finished before asked', line);
    const process = this.text('process', cells, line);
    const material = this.text('material', cells, line);
    const stages = this.plan.stages.map((stage) => this.stageOf(stage, cells, line));
    const isDone = finish !== null || done;
    const isOpen = !isDone && !cancelled && (places.finished !== undefined || open);
    const promised = this.moment('promised', cells, line, null);
    return {
      row: line,
      name: this.text('job', cells, line),
      asked: asked.at,
      askedHasClock: asked.hasClock,
      part: this.partOf(cells, line, process ?? material ?? ''),
      quantity: this.quantityOf(cells, line),
      process,
      material,
      rush: places.priority === undefined ? null : this.priorities.isRush(this.cell('priority', cells)),
      promised: promised === null ? null : endOf(promised),
      finished: isBefore || cancelled ? null : finishedAt,
      finishedHasClock: finish?.hasClock ?? false,
      cancelled,
      isOpen,
      stages,
      stage: isOpen ? this.stageOfOpen(cells, line, status) : null,
      machine: this.text('machine', cells, line),
      requester: this.options.keepsRequesters ? this.text('requester', cells, line) : null,
    };
  }

  /** The later of two rows counts where both have the same number and the same part. */
  private keep(job: MutableJob, line: number): void {
    const key = job.name === null ? null : rowHash([job.name, job.part]);
    const before = key === null ? undefined : this.byName.get(key);
    if (before !== undefined) {
      this.troubles.add('same job again', line);
      this.jobs[before] = job;
      return;
    }
    if (key !== null) this.byName.set(key, this.jobs.length);
    this.jobs.push(job);
  }

  private isFilled(cells: readonly string[]): boolean {
    return Object.values(this.plan.places).some(({ position }) => (cells[position] ?? '').trim() !== '');
  }

  private cell(column: JobColumn, cells: readonly string[]): string {
    const place = this.plan.places[column];
    return place === undefined ? '' : (cells[place.position] ?? '').trim();
  }

  private text(column: JobColumn, cells: readonly string[], line: number): string | null {
    const { text, isFormula: is } = this.clean(this.cell(column, cells));
    if (is) this.troubles.add('formula', line);
    return text;
  }

  private partOf(cells: readonly string[], line: number, group: string): string {
    const written = this.text('part', cells, line);
    if (written === null && this.plan.places.part !== undefined) this.troubles.add('no part', line);
    return this.parts.take(written ?? UNNAMED, group);
  }

  private quantityOf(cells: readonly string[], line: number): number | null {
    const cell = this.cell('quantity', cells);
    if (cell === '') return null;
    const value = readNumber(cell, true);
    if (value !== null && Number.isInteger(value) && value > 0 && value <= MOST_PIECES) return value;
    this.troubles.add('unreadable number', line);
    return null;
  }

  private stageOfOpen(cells: readonly string[], line: number, status: string): string | null {
    if (this.plan.places.stage !== undefined) return this.text('stage', cells, line);
    // A status that is none of the usual words names where the job stands.
    return this.statusOf(status).open ? null : this.clean(status).text;
  }

  private stageOf(
    { name, start, end, isWork }: StagePlaces,
    cells: readonly string[],
    line: number,
  ): LoggedStage {
    const at = (place: StagePlaces['start']): number | null =>
      place === null ? null : (this.momentAt(place.position, cells, line)?.at ?? null);
    const [from, to] = [at(start), at(end)];
    if (from !== null && to !== null && to < from) {
      this.troubles.add('stage ends before it starts', line);
      return { name, start: null, end: null, isWork };
    }
    return { name, start: from, end: to, isWork };
  }

  private moment(
    column: JobColumn,
    cells: readonly string[],
    line: number,
    ifEmpty: 'no date' | null,
  ): Moment | null {
    const place = this.plan.places[column];
    if (place === undefined) return null;
    const isEmpty = (cells[place.position] ?? '').trim() === '';
    if (isEmpty && ifEmpty !== null) this.troubles.add(ifEmpty, line);
    return isEmpty ? null : this.momentAt(place.position, cells, line);
  }

  private momentAt(position: number, cells: readonly string[], line: number): Moment | null {
    const cell = (cells[position] ?? '').trim();
    if (cell === '') return null;
    const moment = this.options.dates.read(cell, this.plan.clockPositions.has(position));
    if (moment === null) this.troubles.add('unreadable date', line);
    else if (moment.trouble !== null) this.troubles.add(moment.trouble, line);
    return moment;
  }

  private nothingKept(): TableProblem {
    const { asked } = this.plan.places;
    const first = this.troubles.all()[0]?.rows[0] ?? null;
    return new TableProblem(`No row has a date that can be read under "${asked?.heading ?? ''}".`, {
      row: first,
      found: '',
      expected: 'dates such as 2026-03-04 09:15, 04.03.2026 or 3/4/2026 9:15 am',
      write: 'asked: HEADING of the column with the dates, under "columns:" in a mapping file',
    });
  }
}

/** Nobody asks for more pieces of one part; more is a number of something else. */
const MOST_PIECES = 1_000_000;

function endOf({ at, hasClock }: Moment): number {
  return hasClock ? at : at + END_OF_DAY;
}
