import { WAIT_CAUSES } from '@buildweek/results';
import type { CompiledWork } from './compiled-lab.ts';
import type { Load } from './load.ts';
import type { Rank } from './rank.ts';
import type { Unit } from './unit.ts';
import type { UpkeepItem } from './upkeep-item.ts';

/** What a task is for. */
export const TASK_BENCH = 0;
export const TASK_PHASE = 1;
export const TASK_REPAIR = 2;
export const TASK_CHORE = 3;
export const TASK_CLEANING = 4;

/** One piece of attended work, from the moment it is ready until it is done; it may be paused in between. */
export class Task implements Rank {
  readonly id: number;
  work!: CompiledWork;
  purpose = TASK_BENCH;
  /** What it is done to; null for upkeep, which holds nothing of anybody's job. */
  load: Load | null = null;
  /** Machine or station that it is a phase of, or that is repaired; null for a bench. */
  unit: Unit | null = null;
  upkeep: UpkeepItem | null = null;
  isWaiting = false;
  /** Step of the load's stage on which its hours are booked. */
  stepOffset = 0;
  remaining = 0;
  /** What must fit before the end of the window: typical, or drawn when the lab asks for it. */
  need = 0;
  pausable = false;
  /** Whether it gets a machine ready; such work counts in the last call. */
  isSetUp = false;
  /** Whether it has been paused before. */
  resumed = false;
  startedAt = 0;
  /** Positions of the persons at it; the first `work.persons` count. */
  readonly staff: Int32Array;
  stamp = 0;

  rush = 1;
  kind = 0;
  dueAt = 0;
  jobNumber = 0;
  order = 0;
  before: Task | null = null;
  after: Task | null = null;
  readyAt = 0;
  readonly clockAtEntry = new Float64Array(WAIT_CAUSES.length);

  constructor(id: number, mostPersons: number) {
    this.id = id;
    this.staff = new Int32Array(mostPersons);
  }
}
