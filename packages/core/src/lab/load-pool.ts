import type { CompiledLab } from './compiled-lab.ts';
import type { Job } from './job.ts';
import { Load, Lot } from './load.ts';
import { Pool } from './pool.ts';

/** The loads and lots that are in the lab: how they are made, put together, split and given back. */
export class LoadPool {
  private readonly loads: Pool<Load>;
  private readonly lots: Pool<Lot>;

  constructor(compiled: CompiledLab) {
    this.loads = new Pool((id) => new Load(id, compiled.mostTailStages));
    this.lots = new Pool((id) => new Lot(id));
  }

  reset(): void {
    this.loads.reset();
    this.lots.reset();
  }

  at(id: number): Load {
    return this.loads.at(id);
  }

  /** Sends a new job on its way, as one load at its stage. */
  begin(job: Job, stage: number): Load {
    const lot = this.createLot(job, job.quantity, stage);
    return this.loadOf(lot);
  }

  /** A load with a single lot of a job. */
  loadOf(lot: Lot): Load {
    const load = this.emptyLoad();
    this.addLot(load, lot);
    return load;
  }

  /** A load without anything in it, for a build that is being put together. */
  emptyLoad(): Load {
    const load = this.loads.take();
    load.lots = null;
    load.pieces = 0;
    load.weight = 0;
    load.space = 0;
    load.isBuild = false;
    load.task = null;
    load.waitsIn = null;
    load.isStanding = false;
    load.carrier = -1;
    load.tailOffset = 0;
    load.rush = 1;
    load.kind = 0;
    load.dueAt = Number.POSITIVE_INFINITY;
    load.jobNumber = Number.POSITIVE_INFINITY;
    load.order = 0;
    load.nextInUnit = null;
    return load;
  }

  /** Puts a lot into a load, which takes on its rank when that is better. */
  addLot(load: Load, lot: Lot): void {
    const { job } = lot;
    lot.nextInLoad = load.lots;
    lot.load = load;
    load.lots = lot;
    load.pieces += lot.pieces;
    load.weight += lot.pieces / job.quantity;
    load.space += lot.pieces * lot.part.space;
    const rush = job.rush ? 0 : 1;
    const isBetter =
      rush !== load.rush
        ? rush < load.rush
        : job.dueAt !== load.dueAt
          ? job.dueAt < load.dueAt
          : job.number < load.jobNumber;
    if (isBetter) {
      load.rush = rush;
      load.dueAt = job.dueAt;
      load.jobNumber = job.number;
    }
  }

  /** Gives back a load whose lots have gone elsewhere. */
  dropLoad(load: Load): void {
    load.stamp++;
    this.loads.give(load);
  }

  createLot(job: Job, pieces: number, stage: number): Lot {
    const lot = this.lots.take();
    lot.job = job;
    lot.pieces = pieces;
    lot.firstPiece = 0;
    lot.part = job.part;
    lot.quantity = job.quantity;
    lot.load = null;
    lot.isDead = false;
    lot.visit = 0;
    lot.stage = stage;
    lot.nextInLoad = null;
    lot.nextOfJob = job.lots;
    lot.parkedAt = -1;
    job.lots = lot;
    return lot;
  }

  /** Gives back the lots of a job that has ended. */
  dropLots(job: Job): void {
    for (let lot = job.lots; lot !== null; lot = lot.nextOfJob) this.lots.give(lot);
    job.lots = null;
  }

  /** Splits so many pieces off the only lot of a waiting load. */
  splitOff(load: Load, lot: Lot, pieces: number): Lot {
    lot.pieces -= pieces;
    load.pieces -= pieces;
    load.weight = lot.pieces / lot.job.quantity;
    load.space = lot.pieces * lot.job.part.space;
    const split = this.createLot(lot.job, pieces, lot.stage);
    split.firstPiece = lot.firstPiece;
    split.visit = lot.visit;
    lot.firstPiece += pieces;
    return split;
  }

  /** Gives back a lot whose pieces have gone elsewhere or are dropped. */
  dropLot(lot: Lot): void {
    this.lots.give(lot);
  }
}
