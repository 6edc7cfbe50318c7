import { WAIT_CAUSES } from '@buildweek/results';
import type { CompiledPart, CompiledStage } from './compiled-lab.ts';
import type { Job } from './job.ts';
import type { Rank } from './rank.ts';
import type { Task } from './task.ts';
import type { UnitClass } from './unit-class.ts';

/** Pieces of one job that stay together. */
export class Lot {
  readonly id: number;
  job!: Job;
  /** Part type and quantity of the job, also when the job has been given up and is gone. */
  part!: CompiledPart;
  /** Load in which it is; null while it waits for the rest of its job. */
  load: Load | null = null;
  /** Given up by the requester: it goes through what has begun and is dropped there. */
  isDead = false;
  /** Pieces of the whole job. */
  quantity = 1;
  /** How often its pieces have gone round again. */
  visit = 0;
  pieces = 0;
  /** Number of its first piece within the job, from 0: tells the lots of a split job apart. */
  firstPiece = 0;
  /** Position of the stage that it waits for or is in. */
  stage = 0;
  /** Next lot of the same load, and of the same job. */
  nextInLoad: Lot | null = null;
  nextOfJob: Lot | null = null;
  /** Since when it waits for the rest of its job; -1 when it does not. */
  parkedAt = -1;

  constructor(id: number) {
    this.id = id;
  }

  get definition(): CompiledStage {
    return this.part.stages[this.stage];
  }
}

/** What moves through the lab as one: a lot of one job, or everything that was built together. */
export class Load implements Rank {
  readonly id: number;
  lots: Lot | null = null;
  pieces = 0;
  /** Share of whole jobs in it; what it counts in a queue. */
  weight = 0;
  /** Whether it is a build that has not been taken apart. */
  isBuild = false;
  /** Carrier pool of which it holds one; -1 for none. */
  carrier = -1;
  /** Milliseconds drawn with the build for following stages of level `build`, by stage offset. */
  readonly tailWork: Float64Array;
  /** How many stages it has passed since it was built. */
  tailOffset = 0;
  /** Units of machine space that all its pieces take. */
  space = 0;

  /** Best rank among its jobs. */
  rush = 1;
  kind = 0;
  dueAt = Number.POSITIVE_INFINITY;
  jobNumber = 0;
  order = 0;

  /** When it became ready for what it waits for, and the state of the waiting clock at that moment. */
  readyAt = 0;
  readonly clockAtEntry = new Float64Array(WAIT_CAUSES.length);
  before: Load | null = null;
  after: Load | null = null;
  /** Next load of the same station batch. */
  nextInUnit: Load | null = null;
  /** Class in whose queue it stands; null for none. */
  waitsIn: UnitClass | null = null;
  /** Whether it stands in a plain wait. */
  isStanding = false;
  /** Bench work that it waits for or that goes on; null for none. */
  task: Task | null = null;
  /** Changes whenever a scheduled event of the load is void. */
  stamp = 0;

  constructor(id: number, tailStages: number) {
    this.id = id;
    this.tailWork = new Float64Array(tailStages);
  }
}
