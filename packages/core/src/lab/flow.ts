import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import { CAUSE_REQUESTER } from '../observe/wait-clock.ts';
import { EVENT_WAIT_ENDS } from './events.ts';
import type { Job } from './job.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';

/** How loads go from stage to stage: what they wait for, when they part, when they come together again. */
export class Flow {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /**
   * The requester gives a job up: what waits is taken out of its queue, what has begun goes on to the end of its
   * stage and is dropped there.
   */
  giveUp(job: Job): void {
    const { units, tasks, loads, bookings, now } = this.simulation;
    let lot = job.lots;
    job.lots = null;
    while (lot !== null) {
      const next: Lot | null = lot.nextOfJob;
      const { load } = lot;
      let isWaiting = lot.parkedAt >= 0;
      if (isWaiting) {
        bookings.chargeParked(lot, now - lot.parkedAt);
      } else if (load !== null && !load.isBuild) {
        if (load.waitsIn !== null) {
          isWaiting = true;
          load.waitsIn.clock.advance(now);
          units.leaveClass(load.waitsIn, load);
        } else if (load.task?.isWaiting && !load.task.resumed) {
          isWaiting = true;
          tasks.abandon(load.task);
        } else if (load.isStanding && lot.definition.kind === 'wait') {
          isWaiting = true;
        }
        if (isWaiting) loads.dropLoad(load);
      }
      if (isWaiting) {
        loads.dropLot(lot);
      } else {
        lot.isDead = true;
        if (load !== null) load.weight -= lot.pieces / lot.quantity;
      }
      lot = next;
    }
  }

  /**
   * A load is ready for the stage that its lots stand at.
   *
   * @param isGoingOn whether its work was begun before the plan, so that it is resumed
   */
  enterStage(load: Load, isGoingOn = false): void {
    const { compiled, units, tasks, stageWork, tracer, now } = this.simulation;
    const head = load.lots as Lot;
    const stage = head.definition;
    load.readyAt = now;
    if (stage.kind === 'unit') {
      if (compiled.shortestFirst && stage.sampler !== null) load.dueAt = stageWork.drawn(load);
      units.arrive(load, stage.unitClass);
      return;
    }
    const duration = stageWork.drawn(load);
    if (compiled.shortestFirst) load.dueAt = duration;
    if (stage.work !== null) {
      const { work } = stage;
      const units =
        stage.atBuildLevel && stage.basis === 'none' ? 1 : stageWork.typicalUnits(load, stage.basis);
      const task = tasks.create(
        work,
        load,
        null,
        0,
        duration,
        work.typical * units,
        compiled.kindRanks.bench,
      );
      load.task = task;
      if (isGoingOn) {
        task.resumed = true;
        task.pausable = true;
      }
      tasks.enqueue(task);
      return;
    }
    this.markStarted(load);
    this.beginWait(load, duration);
    tracer?.load('step starts', load, 'wait');
  }

  /** Lets a load stand for so many milliseconds; `waitEnds` follows. */
  beginWait(load: Load, duration: number): void {
    const { calendar, now } = this.simulation;
    load.readyAt = now;
    load.isStanding = true;
    calendar.schedule(now + duration, PHASE_ENDS, EVENT_WAIT_ENDS, load.id, load.stamp);
  }

  waitEnds(id: number, stamp: number): void {
    const load = this.simulation.loads.at(id);
    if (load.stamp !== stamp) return;
    load.isStanding = false;
    const { now, tracer, units, bookings } = this.simulation;
    const stage = (load.lots as Lot).definition;
    const isOutsideCoolDown = stage.kind === 'unit';
    const stepOffset = isOutsideCoolDown ? units.classes[stage.unitClass].compiled.coolDownStep : 0;
    if (stage.isForRequester) bookings.chargeCause(load, 0, CAUSE_REQUESTER, now - load.readyAt);
    else bookings.chargeWork(load, stepOffset, now - load.readyAt);
    tracer?.load('step ends', load, isOutsideCoolDown ? 'cool-down' : 'wait');
    this.stageEnds(load);
  }

  /** The present stage of a load is done: on to the next, apart, or wait for the rest of the job. */
  stageEnds(load: Load): void {
    const { carriers, loads } = this.simulation;
    const head = load.lots as Lot;
    const { stages } = head.part;
    if (emptiesCarrier(load)) carriers.release(load);
    if (load.isBuild) {
      load.tailOffset++;
      if (head.stage + 1 < stages.length && stages[head.stage + 1].atBuildLevel) {
        for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) lot.stage++;
        this.enterStage(load);
        return;
      }
      carriers.release(load);
      let lot = load.lots;
      load.lots = null;
      loads.dropLoad(load);
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
    loads.dropLoad(load);
    head.stage++;
    this.lotLeavesStage(head);
  }

  /** Notes that something of the jobs in a load has been begun. */
  markStarted(load: Load): void {
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      if (!lot.isDead) lot.job.isStarted = true;
    }
  }

  /** Counts pieces that have waited too long between the stage before and the one that begins now. */
  checkMaximumWait(load: Load): void {
    const { recorder, now } = this.simulation;
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      const { maximumWait } = lot.definition;
      if (!lot.isDead && now - load.readyAt > maximumWait) recorder.waitsTooLong(lot.job, lot.stage, now);
    }
  }

  /** The parts of a lost build wait at the build stage again, with the rank and promise of their jobs. */
  giveBack(build: Load): void {
    let lot = build.lots;
    build.lots = null;
    this.simulation.loads.dropLoad(build);
    while (lot !== null) {
      const next: Lot | null = lot.nextInLoad;
      this.repeat(lot, lot.stage);
      lot = next;
    }
  }

  /** One job of a build is found spoilt when it is unloaded; the others go on. */
  giveBackOneLot(build: Load, share: number): void {
    let count = 0;
    for (let lot = build.lots; lot !== null; lot = lot.nextInLoad) count++;
    let position = Math.floor(share * count);
    let before: Lot | null = null;
    let lot = build.lots;
    while (lot !== null && position > 0) {
      before = lot;
      lot = lot.nextInLoad;
      position--;
    }
    if (lot === null) return;
    if (before === null) build.lots = lot.nextInLoad;
    else before.nextInLoad = lot.nextInLoad;
    build.pieces -= lot.pieces;
    build.weight -= lot.pieces / lot.quantity;
    build.space -= lot.pieces * lot.part.space;
    this.repeat(lot, lot.stage);
  }

  /** Sends pieces round again. */
  private repeat(lot: Lot, stage: number): void {
    const { loads, recorder, now } = this.simulation;
    if (lot.isDead) {
      loads.dropLot(lot);
      return;
    }
    recorder.repeats(lot.job, lot.pieces, stage, now);
    lot.stage = stage;
    lot.visit++;
    this.enterStage(loads.loadOf(lot));
  }

  /** A lot has passed a stage (its position is already the next one). */
  private lotLeavesStage(lot: Lot): void {
    const { loads, jobs, stageWork, tracer, now } = this.simulation;
    if (lot.isDead) {
      loads.dropLot(lot);
      return;
    }
    const { job } = lot;
    const { stages } = job.part;
    const passed = lot.stage - 1;
    if (stages[passed].rejectShare > 0) {
      const bad = stageWork.rejected(lot, passed);
      if (bad > 0) {
        tracer?.rejects(lot, passed, bad);
        if (bad === lot.pieces) {
          this.repeat(lot, stages[passed].rejectStage);
          return;
        }
        const again = loads.createLot(job, bad, lot.stage);
        lot.pieces -= bad;
        again.firstPiece = lot.firstPiece + lot.pieces;
        again.visit = lot.visit;
        this.repeat(again, stages[passed].rejectStage);
      }
    }
    const atEnd = lot.stage === stages.length;
    if (lot.pieces === job.quantity) {
      if (atEnd) jobs.end(job);
      else this.enterStage(loads.loadOf(lot));
      return;
    }
    if (!atEnd && !stages[passed].gathersJob) {
      this.enterStage(loads.loadOf(lot));
      return;
    }
    if (this.othersAreBehind(lot)) {
      lot.parkedAt = now;
      lot.load = null;
      return;
    }
    this.gather(lot);
    if (atEnd && lot.pieces === job.quantity) jobs.end(job);
    else this.enterStage(loads.loadOf(lot));
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
    const { now, bookings, loads } = this.simulation;
    let other = job.lots;
    job.lots = lot;
    let kept: Lot | null = null;
    while (other !== null) {
      const next: Lot | null = other.nextOfJob;
      if (other !== lot) {
        if (other.parkedAt >= 0 && other.stage === lot.stage) {
          bookings.chargeParked(other, now - other.parkedAt);
          lot.pieces += other.pieces;
          lot.firstPiece = Math.min(lot.firstPiece, other.firstPiece);
          lot.visit = Math.max(lot.visit, other.visit);
          loads.dropLot(other);
        } else {
          other.nextOfJob = kept;
          kept = other;
        }
      }
      other = next;
    }
    lot.nextOfJob = kept;
  }
}

/** Whether the stage that a load is at empties the carrier of all that is on it. */
function emptiesCarrier(load: Load): boolean {
  for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
    if (!lot.definition.emptiesCarrier) return false;
  }
  return true;
}
