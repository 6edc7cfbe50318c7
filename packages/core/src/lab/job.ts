import { WAIT_CAUSES } from '@buildweek/results';
import type { CompiledPart } from './compiled-lab.ts';
import type { Lot } from './load.ts';

const CAUSES = WAIT_CAUSES.length;

/** What a colleague asked for: a part type, a quantity, a promise. */
export class Job {
  readonly id: number;
  /** Position in the order of arrival; the last word in every ranking. */
  number = 0;
  stream = 0;
  part!: CompiledPart;
  quantity = 0;
  rush = false;
  arrivedAt = 0;
  dueAt = Number.POSITIVE_INFINITY;
  /** Whether it arrived in the measured window. */
  inCohort = false;
  /** Position in the order of arrival within its stream; keys what is drawn for it later. */
  numberInStream = 0;
  /** Whether anything of it has been begun. */
  isStarted = false;
  /** Whether it is made outside, and then when it comes back; an event for another time is void. */
  isOutside = false;
  backAt = Number.POSITIVE_INFINITY;
  sentAt = 0;
  /** How often its requester has changed it; keys what is drawn anew. */
  revision = 0;
  /** Changes whenever a scheduled event of the job is void. */
  stamp = 0;
  /** First of its lots. */
  lots: Lot | null = null;
  /** Milliseconds drawn at arrival, for each stage. */
  readonly stageWork: Float64Array;
  /** Uniform numbers drawn at arrival for what is found bad, for each stage. */
  readonly rejectDraws: Float64Array;
  /** Piece milliseconds in which each step went on. */
  readonly work: Float64Array;
  /** Piece milliseconds of waiting for each step: `step * CAUSES + cause`. */
  readonly waits: Float64Array;
  /** Neighbours among the jobs in the lab. */
  before: Job | null = null;
  after: Job | null = null;

  constructor(id: number, stages: number, steps: number) {
    this.id = id;
    this.stageWork = new Float64Array(stages);
    this.rejectDraws = new Float64Array(stages);
    this.work = new Float64Array(steps);
    this.waits = new Float64Array(steps * CAUSES);
  }
}
