import { WAIT_CAUSES } from '@buildweek/results';
import { toMilliseconds } from '../kernel/clock.ts';
import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import { createStream } from '../kernel/streams.ts';
import { CAUSE_REST_OF_JOB } from '../observe/wait-clock.ts';
import { EVENT_WAIT_ENDS } from './events.ts';
import type { Job } from './job.ts';
import { Load, Lot } from './load.ts';
import { Pool } from './pool.ts';
import type { Simulation } from './simulation.ts';

const CAUSES = WAIT_CAUSES.length;

/** How loads go from stage to stage: what they wait for, when they part, when they come together again. */
export class Flow {
  private readonly simulation: Simulation;
  private readonly loads: Pool<Load>;
  private readonly lots: Pool<Lot>;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
    this.loads = new Pool((id) => new Load(id, simulation.compiled.mostTailStages));
    this.lots = new Pool((id) => new Lot(id));
  }

  reset(): void {
    this.loads.reset();
    this.lots.reset();
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
    load.lots = lot;
    load.pieces += lot.pieces;
    load.weight += lot.pieces / job.quantity;
    load.space += lot.pieces * job.part.space;
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
    lot.firstPiece += pieces;
    return split;
  }

  /**
   * A load is ready for the stage that its lots stand at.
   *
   * @param isGoingOn whether its work was begun before the plan, so that it is resumed
   */
  enterStage(load: Load, isGoingOn = false): void {
    const { simulation } = this;
    const head = load.lots as Lot;
    const stage = head.definition;
    if (stage.kind === 'unit') {
      simulation.units.arrive(load, stage.unitClass);
      return;
    }
    const duration = this.stageWork(load);
    if (stage.work !== null) {
      const { work } = stage;
      const units = stage.atBuildLevel && stage.basis === 'none' ? 1 : this.typicalUnits(load, stage.basis);
      const task = simulation.tasks.create(
        work,
        load,
        null,
        0,
        duration,
        work.typical * units,
        simulation.compiled.kindRanks.bench,
        false,
      );
      if (isGoingOn) {
        task.resumed = true;
        task.pausable = true;
      }
      simulation.tasks.enqueue(task);
      return;
    }
    this.beginWait(load, duration);
    simulation.tracer?.load('step starts', load, 'wait');
  }

  /** Lets a load stand for so many milliseconds; `waitEnds` follows. */
  beginWait(load: Load, duration: number): void {
    const { calendar, now } = this.simulation;
    load.readyAt = now;
    calendar.schedule(now + duration, PHASE_ENDS, EVENT_WAIT_ENDS, load.id, load.stamp);
  }

  waitEnds(id: number, stamp: number): void {
    const load = this.loads.at(id);
    if (load.stamp !== stamp) return;
    const { now, tracer, units } = this.simulation;
    const stage = (load.lots as Lot).definition;
    const isOutsideCoolDown = stage.kind === 'unit';
    const stepOffset = isOutsideCoolDown ? units.coolDownStep(stage.unitClass) : 0;
    this.chargeWork(load, stepOffset, now - load.readyAt);
    tracer?.load('step ends', load, isOutsideCoolDown ? 'cool-down' : 'wait');
    this.stageEnds(load);
  }

  /**
   * Milliseconds of the present stage for a load: what was drawn with its build, or with its jobs. A lot that
   * is only a part of its job has its share of the work per job, draws of its own for work per piece, and the
   * whole of a plain wait.
   */
  stageWork(load: Load): number {
    const head = load.lots as Lot;
    const stage = head.definition;
    if (stage.atBuildLevel && stage.basis === 'none') return load.tailWork[load.tailOffset];
    let sum = 0;
    for (let lot: Lot | null = load.lots; lot !== null; lot = lot.nextInLoad) sum += this.lotWork(lot);
    return sum;
  }

  /** What the typical duration of the stage counts for: pieces, jobs, or 1. */
  typicalUnits(load: Load, basis: 'none' | 'job' | 'part'): number {
    if (basis === 'part') return load.pieces;
    if (basis === 'none') return 1;
    return load.weight;
  }

  /** The present stage of a load is done: on to the next, apart, or wait for the rest of the job. */
  stageEnds(load: Load): void {
    const { units } = this.simulation;
    const stage = (load.lots as Lot).definition;
    if (stage.emptiesCarrier && load.carrier >= 0) units.releaseCarrier(load);
    const head = load.lots as Lot;
    const { stages } = head.job.part;
    if (load.isBuild) {
      load.tailOffset++;
      if (head.stage + 1 < stages.length && stages[head.stage + 1].atBuildLevel) {
        for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) lot.stage++;
        this.enterStage(load);
        return;
      }
      if (load.carrier >= 0) units.releaseCarrier(load);
      let lot = load.lots;
      load.lots = null;
      this.dropLoad(load);
      // Lots were put in at the head, so this takes the chain apart back to front; ranks decide what is first.
      while (lot !== null) {
        const next: Lot | null = lot.nextInLoad;
        // One after the other, so that lots of the same job wait for each other.
        lot.stage++;
        this.lotLeavesStage(lot);
        lot = next;
      }
      return;
    }
    this.dropLoad(load);
    head.stage++;
    this.lotLeavesStage(head);
  }

  /** Adds a period of work to each job in a load, by pieces. */
  chargeWork(load: Load, stepOffset: number, duration: number): void {
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      lot.job.work[lot.definition.firstStep + stepOffset] += lot.pieces * duration;
    }
  }

  /** Adds a period of waiting, as the difference of two clock readings, to each job in a load, by pieces. */
  chargeWait(load: Load, stepOffset: number, until: Float64Array, from: Float64Array): void {
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      this.chargeLotWait(lot, stepOffset, until, from);
    }
  }

  chargeLotWait(lot: Lot, stepOffset: number, until: Float64Array, from: Float64Array): void {
    const { waits } = lot.job;
    const first = (lot.definition.firstStep + stepOffset) * CAUSES;
    for (let cause = 0; cause < CAUSES; cause++) {
      const duration = until[cause] - from[cause];
      if (duration !== 0) waits[first + cause] += lot.pieces * duration;
    }
  }

  private lotWork(lot: Lot): number {
    const { job } = lot;
    const drawn = job.stageWork[lot.stage];
    if (lot.pieces === job.quantity) return drawn;
    const stage = lot.definition;
    // Waiting is no work that is shared: few pieces dry as long as many.
    if (stage.kind === 'wait') return drawn;
    if (stage.basis !== 'part') return Math.round((drawn * lot.pieces) / job.quantity);
    if (stage.constant || stage.sampler === null) return Math.round((drawn * lot.pieces) / job.quantity);
    // Rare: a job split over builds.
    const { settings, compiled } = this.simulation;
    const owner = `${compiled.streams[job.stream].stream.name} ${job.number} ${stage.name} ${lot.firstPiece}`;
    const stream = createStream(settings.seed, settings.replication, 'work of a split job', owner);
    let hours = 0;
    for (let piece = 0; piece < lot.pieces; piece++) hours += stage.sampler.sample(stream());
    return toMilliseconds(hours);
  }

  /** A lot has passed a stage (its position is already the next one). */
  private lotLeavesStage(lot: Lot): void {
    const { job } = lot;
    const { stages } = job.part;
    const atEnd = lot.stage === stages.length;
    if (lot.pieces === job.quantity) {
      if (atEnd) this.simulation.jobs.end(job);
      else this.enterStage(this.loadOf(lot));
      return;
    }
    if (!atEnd && !stages[lot.stage - 1].gathersJob) {
      this.enterStage(this.loadOf(lot));
      return;
    }
    if (this.othersAreBehind(lot)) {
      lot.parkedAt = this.simulation.now;
      return;
    }
    this.gather(lot);
    if (atEnd && lot.pieces === job.quantity) this.simulation.jobs.end(job);
    else this.enterStage(this.loadOf(lot));
  }

  /** Whether a lot of the same job has yet to come to where this one is. */
  private othersAreBehind(lot: Lot): boolean {
    for (let other = lot.job.lots; other !== null; other = other.nextOfJob) {
      if (other !== lot && other.parkedAt < 0 && other.stage < lot.stage) return true;
    }
    return false;
  }

  /** Unites a lot with those that were waiting for it. */
  private gather(lot: Lot): void {
    const { job } = lot;
    const { now } = this.simulation;
    let other = job.lots;
    job.lots = lot;
    let kept: Lot | null = null;
    while (other !== null) {
      const next: Lot | null = other.nextOfJob;
      if (other !== lot) {
        if (other.parkedAt >= 0 && other.stage === lot.stage) {
          this.chargeParked(other, now - other.parkedAt);
          lot.pieces += other.pieces;
          lot.firstPiece = Math.min(lot.firstPiece, other.firstPiece);
          this.lots.give(other);
        } else {
          other.nextOfJob = kept;
          kept = other;
        }
      }
      other = next;
    }
    lot.nextOfJob = kept;
  }

  /** Waiting for the rest of the job counts for the step that comes next; behind the last, for that. */
  private chargeParked(lot: Lot, duration: number): void {
    const { stages } = lot.job.part;
    const last = stages[stages.length - 1];
    const step =
      lot.stage < stages.length ? stages[lot.stage].firstStep : last.firstStep + last.stepCount - 1;
    lot.job.waits[step * CAUSES + CAUSE_REST_OF_JOB] += lot.pieces * duration;
  }
}
