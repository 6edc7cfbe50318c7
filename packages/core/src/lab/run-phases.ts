import { PHASE_ENDS, PHASE_TIMERS } from '../kernel/event-calendar.ts';
import { CAUSE_MACHINE_DOWN, CAUSE_PERSON, CAUSE_SHIFT } from '../observe/wait-clock.ts';
import type { CompiledPhase, CompiledUnitClass } from './compiled-lab.ts';
import { EVENT_END_NOTICED, EVENT_MAY_RUN, EVENT_PHASE_ENDS } from './events.ts';
import type { Load } from './load.ts';
import { earliestFit } from './presence.ts';
import type { Simulation } from './simulation.ts';
import { TASK_CHORE, TASK_CLEANING, TASK_PHASE, type Task } from './task.ts';
import type { Unit } from './unit.ts';
import { UNLOAD, WAITING_TO_BE_UNLOADED, WAITING_TO_START } from './unit-states.ts';

/** What a unit stands still for between two phases. */
const PENDING_NOTHING = 0;
const PENDING_NOTICE = 1;
const PENDING_PERMISSION = 2;

/** How a run goes through its phases, is interrupted, goes on, fails and ends. */
export class RunPhases {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /** A run has been put together and its durations are fixed; people for its first phase are in `staff.found`. */
  begin(unit: Unit): void {
    unit.endedAt = -1;
    const [first] = phasesOf(unit);
    if (first.work === null) {
      unit.phase = -1;
      this.advance(unit);
      return;
    }
    unit.phase = 0;
    this.simulation.tasks.start(this.createTask(unit, first));
  }

  /** @param remaining milliseconds that are left of the work */
  attendedWorkStarts(unit: Unit, purpose: number, remaining: number): void {
    const { units, upkeep, now } = this.simulation;
    if (purpose === TASK_PHASE) {
      units.setState(unit, phaseOf(unit).state);
      unit.phaseStartedAt = now;
      if (phaseOf(unit).isRunning) upkeep.runningBegins(unit, remaining);
    } else if (purpose === TASK_CLEANING) units.setState(unit, UNLOAD);
    else if (purpose === TASK_CHORE) units.refresh(unit);
  }

  attendedWorkPauses(unit: Unit, purpose: number): void {
    const { units, upkeep, now } = this.simulation;
    if (purpose === TASK_PHASE) {
      units.setState(unit, phaseOf(unit).waitState);
      if (phaseOf(unit).isRunning) upkeep.runningStops(unit, now - unit.phaseStartedAt);
    } else if (purpose === TASK_CLEANING) units.setState(unit, WAITING_TO_BE_UNLOADED);
  }

  attendedPhaseEnds(unit: Unit): void {
    const { upkeep, now } = this.simulation;
    if (phaseOf(unit).isRunning) upkeep.runningStops(unit, now - unit.phaseStartedAt);
    this.advance(unit);
  }

  unattendedPhaseEnds(index: number, stamp: number): void {
    const unit = this.simulation.units.units[index];
    if (unit.stamp !== stamp) return;
    const { now, tracer } = this.simulation;
    const phase = phaseOf(unit);
    this.chargeWork(unit, phase.stepOffset, now - unit.phaseStartedAt);
    if (phase.isRunning) this.simulation.upkeep.runningStops(unit, now - unit.phaseStartedAt);
    tracer?.unit('step ends', unit, phase.phase);
    this.advance(unit);
  }

  /** Somebody has seen that the unattended part of a run is over. */
  endNoticed(index: number, stamp: number): void {
    const unit = this.simulation.units.units[index];
    if (unit.stamp !== stamp) return;
    this.chargePending(unit);
    if (unit.willFail) this.clearFailed(unit);
    else this.simulation.tasks.enqueue(this.createTask(unit, phaseOf(unit)));
  }

  /** The hours have come in which the next phase may run with nobody there. */
  mayRun(index: number, stamp: number): void {
    const unit = this.simulation.units.units[index];
    if (unit.stamp !== stamp) return;
    this.chargePending(unit);
    this.enterPhase(unit);
  }

  /** A failure stops whatever goes on in a unit. */
  interrupt(unit: Unit, losesBuild: boolean): void {
    const { upkeep, units, tasks, compiled, now, tracer } = this.simulation;
    upkeep.breakOffChore(unit);
    unit.isLost = false;
    if (unit.unitClass === null) {
      if (unit.task !== null) tasks.abandon(unit.task);
      units.refresh(unit);
      return;
    }
    const isMachine = compiled.unitGroups[unit.group].kind === 'machine';
    // None behind the last one, where a failed build that nobody would unload waits to be noticed and cleaned out.
    const phase: CompiledPhase | undefined = phasesOf(unit)[unit.phase];
    const isPrinting = phase?.what === 'run' || phase?.phase === 'first layers';
    if (unit.task !== null) {
      const { task } = unit;
      const elapsed = task.isWaiting ? 0 : now - task.startedAt;
      if (phase?.isRunning && !task.isWaiting) upkeep.runningStops(unit, elapsed);
      if (isPrinting && !losesBuild) this.leaves(unit, task.remaining - elapsed);
      // First layers that nobody has begun to watch are no print yet.
      else if (isPrinting && isMachine && (task.resumed || !task.isWaiting)) unit.isLost = true;
      tasks.abandon(task);
    } else if (unit.pending !== PENDING_NOTHING) {
      this.chargePending(unit);
    } else if (phase !== undefined) {
      const elapsed = now - unit.phaseStartedAt;
      this.chargeWork(unit, phase.stepOffset, elapsed);
      tracer?.unit('step is broken off', unit, phase.phase);
      if (phase.isRunning) upkeep.runningStops(unit, elapsed);
      unit.stamp++;
      if (!isPrinting || !losesBuild) this.leaves(unit, unit.durations[unit.phase] - elapsed);
      else if (isMachine) unit.isLost = true;
    }
    units.refresh(unit);
  }

  /** Of the present phase only so many milliseconds are left to be done after a repair. */
  private leaves(unit: Unit, left: number): void {
    const done = unit.durations[unit.phase] - left;
    unit.durations[unit.phase] = left;
    unit.typicals[unit.phase] = Math.max(0, unit.typicals[unit.phase] - done);
  }

  /** People have learnt that a build is lost: its parts wait to be built again. */
  giveBackLost(unit: Unit): void {
    if (!unit.isLost) return;
    unit.isLost = false;
    this.chargeDown(unit);
    this.giveBackBuild(unit);
    unit.unitClass = null;
    unit.phase = -1;
  }

  /** A unit has been repaired. */
  resume(unit: Unit): void {
    const { units, carriers } = this.simulation;
    if (unit.unitClass === null) {
      carriers.releaseHeld(unit);
      units.refresh(unit);
      return;
    }
    this.chargeDown(unit);
    if (unit.loads === null) this.beginCleaning(unit);
    else this.enterPhase(unit);
  }

  cleaningEnds(unit: Unit): void {
    const { units, carriers } = this.simulation;
    unit.unitClass = null;
    unit.phase = -1;
    carriers.releaseHeld(unit);
    units.refresh(unit);
  }

  /** On to the next phase that takes any time; behind the last one the run ends. */
  private advance(unit: Unit): void {
    const { phases, runPhase } = unit.unitClass as CompiledUnitClass;
    for (;;) {
      unit.phase++;
      if (
        unit.willFail &&
        unit.phase > runPhase &&
        (unit.phase === phases.length || phases[unit.phase].work !== null)
      ) {
        this.awaitNotice(unit);
        return;
      }
      if (unit.phase === phases.length) {
        this.runEnds(unit);
        return;
      }
      const phase = phases[unit.phase];
      if (phase.work !== null || unit.durations[unit.phase] > 0 || phase.what === 'run') {
        this.enterPhase(unit);
        return;
      }
    }
  }

  private enterPhase(unit: Unit): void {
    const { units, tasks, now, calendar } = this.simulation;
    const { runPhase } = unit.unitClass as CompiledUnitClass;
    const phase = phasesOf(unit)[unit.phase];
    if (phase === undefined || (unit.willFail && unit.phase > runPhase && phase.work !== null)) {
      this.awaitNotice(unit);
      return;
    }
    if (phase.work !== null) {
      if (unit.phase > runPhase) {
        this.awaitNotice(unit);
      } else {
        units.setState(unit, phase.waitState);
        tasks.enqueue(this.createTask(unit, phase));
      }
      return;
    }
    const allowed = units.groups[unit.group].allowedWindows;
    if (allowed !== null) {
      const start = earliestFit(allowed, now, this.typicalUnattended(unit));
      if (start > now) {
        units.setState(unit, WAITING_TO_START);
        this.standStill(unit, PENDING_PERMISSION);
        calendar.schedule(start, PHASE_TIMERS, EVENT_MAY_RUN, unit.index, unit.stamp);
        return;
      }
    }
    this.beginUnattended(unit, phase);
  }

  /** Lets a unit stand until somebody sees that it has ended, or has failed. */
  private awaitNotice(unit: Unit): void {
    const { presence, calendar, compiled, now, units } = this.simulation;
    units.setState(unit, phasesOf(unit)[unit.phase]?.waitState ?? WAITING_TO_BE_UNLOADED);
    const { noticing } = compiled.unitGroups[unit.group].conditions;
    // Whoever is not in cannot unload, so noticing adds nothing unless it takes a round or an arrival.
    const isAtOnce = noticing.kind === 'monitored' || noticing.kind === 'when somebody is in';
    const { phases, runPhase } = unit.unitClass as CompiledUnitClass;
    const isSeen = (isAtOnce || phases[runPhase].work !== null) && !unit.willFail;
    // What had been seen before the machine broke down is not to be noticed again.
    if (unit.endedAt < 0) unit.endedAt = now;
    const noticedAt = isSeen ? now : Math.max(now, presence.noticedAt(noticing, unit.endedAt));
    this.standStill(unit, PENDING_NOTICE);
    if (noticedAt === now) this.endNoticed(unit.index, unit.stamp);
    else calendar.schedule(noticedAt, PHASE_TIMERS, EVENT_END_NOTICED, unit.index, unit.stamp);
  }

  private standStill(unit: Unit, pending: number): void {
    unit.pending = pending;
    unit.phaseStartedAt = this.simulation.now;
    unit.stamp++;
  }

  private beginUnattended(unit: Unit, phase: CompiledPhase): void {
    const { calendar, now, tracer, units, upkeep } = this.simulation;
    units.setState(unit, phase.state);
    unit.phaseStartedAt = now;
    unit.stamp++;
    const duration = unit.durations[unit.phase];
    calendar.schedule(now + duration, PHASE_ENDS, EVENT_PHASE_ENDS, unit.index, unit.stamp);
    if (phase.isRunning) upkeep.runningBegins(unit, duration);
    tracer?.unit('step starts', unit, phase.phase);
  }

  private createTask(unit: Unit, phase: CompiledPhase): Task {
    const { compiled, tasks } = this.simulation;
    const group = compiled.unitGroups[unit.group];
    const task = tasks.create(
      phase.work as NonNullable<CompiledPhase['work']>,
      unit.loads as Load,
      unit,
      phase.stepOffset,
      unit.durations[unit.phase],
      unit.typicals[unit.phase],
      group.kindRank,
    );
    task.isSetUp = group.kind === 'machine' && unit.phase < (unit.unitClass as CompiledUnitClass).runPhase;
    return task;
  }

  /** Typical milliseconds from the present phase to the next one that needs people. */
  private typicalUnattended(unit: Unit): number {
    const phases = phasesOf(unit);
    let sum = 0;
    for (let phase = unit.phase; phase < phases.length && phases[phase].work === null; phase++) {
      sum += unit.typicals[phase];
    }
    return sum;
  }

  private clearFailed(unit: Unit): void {
    this.giveBackBuild(unit);
    this.beginCleaning(unit);
  }

  /** Takes the lost parts out of a machine; they wait at the build stage again. */
  private giveBackBuild(unit: Unit): void {
    const { flow, recorder, now } = this.simulation;
    const build = unit.loads as Load;
    unit.heldCarrier = build.carrier;
    unit.loads = null;
    unit.willFail = false;
    recorder.buildFails(unit, build, now);
    flow.giveBack(build);
  }

  private beginCleaning(unit: Unit): void {
    const { compiled, tasks, units } = this.simulation;
    const phases = phasesOf(unit);
    const { failure } = compiled.unitGroups[unit.group];
    const unload = phases.at(-1)?.phase === 'unload' ? phases.length - 1 : -1;
    const work = failure?.cleaning ?? phases[unload]?.work ?? null;
    units.setState(unit, WAITING_TO_BE_UNLOADED);
    if (work === null) {
      this.cleaningEnds(unit);
      return;
    }
    const duration = failure?.cleaning == null ? unit.durations[unload] : unit.cleaningDuration;
    tasks.enqueue(tasks.createCleaning(work, unit, duration));
  }

  private runEnds(unit: Unit): void {
    const { flow, recorder, now, tracer, units, loads, carriers } = this.simulation;
    const group = units.groups[unit.group];
    const first = unit.loads as Load;
    recorder.runEnds(unit, now);
    unit.loads = null;
    unit.unitClass = null;
    unit.phase = -1;
    unit.stamp++;
    if (unit.spoilsOneJob) flow.giveBackOneLot(first, unit.spoiltShare);
    units.refresh(unit);
    if (first.lots === null) {
      // Nothing of ours was in it, or everything was spoilt.
      carriers.release(first);
      loads.dropLoad(first);
      return;
    }
    if (group.compiled.outsideCoolDown !== null) {
      flow.beginWait(first, first.tailWork[0]);
      tracer?.load('step starts', first, 'cool-down');
      return;
    }
    let load: Load | null = first;
    while (load !== null) {
      const next: Load | null = load.nextInUnit;
      load.nextInUnit = null;
      flow.stageEnds(load);
      load = next;
    }
  }

  private chargeWork(unit: Unit, stepOffset: number, duration: number): void {
    for (let load = unit.loads; load !== null; load = load.nextInUnit) {
      this.simulation.bookings.chargeWork(load, stepOffset, duration);
    }
  }

  /** Books the time that a unit stood still, unseen or without permission, with what it holds. */
  private chargePending(unit: Unit): void {
    const { now, presence, bookings } = this.simulation;
    const total = now - unit.phaseStartedAt;
    const attended = unit.pending === PENDING_NOTICE ? presence.attendedWithin(unit.phaseStartedAt, now) : 0;
    const step = this.presentStep(unit);
    for (let load = unit.loads; load !== null; load = load.nextInUnit) {
      bookings.chargeCause(load, step, CAUSE_PERSON, attended);
      bookings.chargeCause(load, step, CAUSE_SHIFT, total - attended);
    }
    unit.pending = PENDING_NOTHING;
    unit.stamp++;
  }

  private chargeDown(unit: Unit): void {
    const { now, bookings } = this.simulation;
    const step = this.presentStep(unit);
    for (let load = unit.loads; load !== null; load = load.nextInUnit) {
      bookings.chargeCause(load, step, CAUSE_MACHINE_DOWN, now - unit.downSince);
    }
  }

  private presentStep(unit: Unit): number {
    const phases = phasesOf(unit);
    return phases[Math.min(unit.phase, phases.length - 1)].stepOffset;
  }
}

function phasesOf(unit: Unit): readonly CompiledPhase[] {
  return (unit.unitClass as CompiledUnitClass).phases;
}

function phaseOf(unit: Unit): CompiledPhase {
  return phasesOf(unit)[unit.phase];
}
