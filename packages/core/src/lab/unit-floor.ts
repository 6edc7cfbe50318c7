import { MACHINE_STATES, STATION_STATES } from '@buildweek/results';
import { toMilliseconds } from '../kernel/clock.ts';
import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import {
  CAUSE_BATCH,
  CAUSE_CARRIER,
  CAUSE_MACHINE,
  CAUSE_MACHINE_DOWN,
  CAUSE_SHIFT,
} from '../observe/wait-clock.ts';
import { type CompiledUnitClass, type CompiledWork, DRAW_SLOTS } from './compiled-lab.ts';
import { largestInBatch, sizeOf, takeBatch, takeBuild } from './content.ts';
import {
  attendedDuration,
  attendedTypical,
  fixDurations,
  materialChangeFor,
  openStreams,
  typicalRun,
} from './durations.ts';
import { EVENT_PHASE_ENDS } from './events.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';
import { Unit } from './unit.ts';
import { UnitClass } from './unit-class.ts';
import { UnitGroup } from './unit-group.ts';
import { IDLE, stateAtRest, WAITING_TO_FILL, WAITING_TO_START } from './unit-states.ts';

/** Machines and stations: what waits for them, what they hold, the phases they go through. */
export class UnitFloor {
  readonly groups: readonly UnitGroup[];
  readonly units: readonly Unit[];
  readonly classes: readonly UnitClass[];
  private readonly simulation: Simulation;
  /** For each attended queue: the groups that need people of its skill to start. */
  private readonly groupsStartedBy: readonly (readonly UnitGroup[])[];

  constructor(simulation: Simulation) {
    const { compiled } = simulation;
    this.simulation = simulation;
    this.classes = compiled.unitClasses.map((unitClass) => new UnitClass(unitClass));
    const states = Math.max(MACHINE_STATES.length, STATION_STATES.length);
    const slots = DRAW_SLOTS.length + compiled.mostTailStages;
    this.units = compiled.units.map((unit) => new Unit(unit, states, compiled.mostPhases, slots));
    this.groups = compiled.unitGroups.map(
      (group) =>
        new UnitGroup(
          group,
          this.units.slice(group.firstUnit, group.firstUnit + group.count),
          group.classes.map((index) => this.classes[index]),
        ),
    );
    this.groupsStartedBy = compiled.attendedQueues.map((queue) =>
      this.groups.filter((group) =>
        group.compiled.startQueues.some((index) => compiled.attendedQueues[index].skill === queue.skill),
      ),
    );
  }

  reset(): void {
    for (const group of this.groups) {
      group.reset();
      for (const unit of group.units) {
        unit.reset(group.compiled.initialMaterial);
        openStreams(this.simulation, unit, group.compiled);
      }
    }
  }

  /** A load is ready for a machine or station. */
  arrive(load: Load, classIndex: number): void {
    const unitClass = this.classes[classIndex];
    const group = this.groups[unitClass.compiled.group];
    load.readyAt = this.simulation.now;
    load.kind = group.compiled.kindRank;
    load.order = this.simulation.tasks.nextOrder();
    unitClass.clock.read(load.clockAtEntry, load.readyAt);
    unitClass.loads.add(load);
    load.waitsIn = unitClass;
    group.waiting++;
    unitClass.waitingSize += sizeOf(load, group.compiled);
    this.becomesStale(group);
  }

  /**
   * Looks for the first-ranked launch that is possible in a group now.
   *
   * @returns its seed; null when nothing can be launched. `group.pickedClass` and `pickedUnit` tell the rest
   */
  pick(group: UnitGroup): Load | null {
    group.pickedClass = null;
    group.isUnsettled = true;
    const { launch, carriers } = this.simulation;
    let best: Load | null = null;
    for (const unitClass of group.classes) {
      launch.judge(group, unitClass);
      const { seed } = unitClass;
      if (seed === null || group.idle === 0 || carriers.isMissing(group.compiled.carrier)) continue;
      if (best !== null && !launch.isPreferred(group, seed, best)) continue;
      const unit = this.bestUnit(group, unitClass.compiled.material);
      unitClass.isBlocked = !launch.mayStartNow(group, unitClass, unit);
      if (unitClass.isBlocked) continue;
      if (!this.findStaff(unitClass, unit) && !this.canInterrupt(unitClass, unit, seed)) continue;
      best = seed;
      group.pickedClass = unitClass;
      group.pickedUnit = unit;
    }
    return best;
  }

  /** Finds the people for the first phase of a run; true when nobody is needed. */
  findStaff(unitClass: UnitClass, unit: Unit): boolean {
    const { work } = unitClass.compiled.phases[0];
    return work === null || this.simulation.staff.find(work.queue, this.startNeed(unitClass, unit));
  }

  /** Launches what `pick` chose. */
  launchPicked(group: UnitGroup): void {
    const { now, flow, runs, staff, carriers } = this.simulation;
    const unitClass = group.pickedClass as UnitClass;
    const unit = group.pickedUnit as Unit;
    // Another class may have been looked at since, so the people are looked for again.
    if (!this.findStaff(unitClass, unit)) {
      // Only for a rush seed, with somebody to interrupt; whoever is freed may have other duties.
      const { work } = unitClass.compiled.phases[0];
      staff.interruptFor((work as CompiledWork).queue, this.startNeed(unitClass, unit));
      if (!this.findStaff(unitClass, unit)) return;
    }
    const change = materialChangeFor(group.compiled, unit, unitClass.compiled.material);
    unitClass.clock.advance(now);
    if (group.compiled.kind === 'machine') {
      const build = takeBuild(this.simulation, unitClass, group.compiled);
      unit.loads = build;
      this.measureContent(unit, unitClass);
      build.kind = group.compiled.kindRank;
      carriers.take(build, group.compiled.carrier);
      unit.material = unitClass.compiled.material;
    } else {
      unit.loads = takeBatch(this.simulation, unitClass, unit, group.compiled);
    }
    unit.unitClass = unitClass.compiled;
    this.refresh(unit);
    fixDurations(this.simulation, unit, unitClass, group.compiled, change);
    for (let load: Load | null = unit.loads; load !== null; load = load.nextInUnit) flow.markStarted(load);
    runs.begin(unit);
  }

  /**
   * Puts a build into a machine whose print goes on when the plan starts.
   *
   * @param end elapsed milliseconds at which everything unattended is over
   */
  hold(unit: Unit, unitClass: CompiledUnitClass, build: Load, material: string | null, end: number): void {
    const group = this.groups[unit.group];
    unit.loads = build;
    unit.unitClass = unitClass;
    unit.material =
      material === null ? unitClass.material : this.simulation.compiled.materials.indexOf(material);
    this.measureContent(unit, this.classes[unitClass.index]);
    this.simulation.carriers.take(build, group.compiled.carrier);
    fixDurations(this.simulation, unit, this.classes[unitClass.index], group.compiled, null);
    // What is unattended is over at the stated time: nothing cools down after it.
    for (let phase = unitClass.runPhase + 1; phase < unitClass.phases.length; phase++) {
      if (unitClass.phases[phase].work === null) unit.durations[phase] = 0;
    }
    // It ends when it is said to, and well.
    unit.durations[unitClass.runPhase] = end;
    unit.willFail = false;
    unit.spoilsOneJob = false;
    unit.phase = unitClass.runPhase;
    unit.phaseStartedAt = this.simulation.now;
    unit.stamp++;
    this.refresh(unit);
    this.setState(unit, unitClass.phases[unit.phase].state);
    this.simulation.calendar.schedule(end, PHASE_ENDS, EVENT_PHASE_ENDS, unit.index, unit.stamp);
    this.simulation.upkeep.runningBegins(unit, end);
  }

  /**
   * Looks again whether a unit can take a new run: it holds none, it is not down, it owes no chore, it is there.
   * A chore that is due begins as soon as the unit is free for it.
   */
  refresh(unit: Unit): void {
    const group = this.groups[unit.group];
    const isMachine = group.compiled.kind === 'machine';
    let isFree = unit.unitClass === null && !unit.isDown && unit.chore === null && !unit.isAway;
    if (isFree) {
      const chore = this.simulation.upkeep.dueChore(unit);
      if (chore !== null) {
        this.simulation.upkeep.beginChore(chore);
        isFree = false;
      }
    }
    if (isFree !== unit.isCounted) {
      unit.isCounted = isFree;
      group.idle += isFree ? 1 : -1;
      this.becomesStale(group);
    }
    group.isUnsettled = true;
    if (unit.unitClass === null || unit.isDown) this.setState(unit, stateAtRest(unit, isMachine));
  }

  /** The equipment of a group comes or goes (borrowed, shared); a run that has begun is finished. */
  equipmentComes(groupIndex: number, isThere: boolean): void {
    const group = this.groups[groupIndex];
    this.simulation.equipmentHours.next(group, isThere);
    this.becomesStale(group);
    for (const unit of group.units) {
      unit.isAway = !isThere;
      this.refresh(unit);
    }
  }

  /**
   * Somebody who could start machines or stations has nothing to do, or goes, or a set-up waits for them: then the
   * last call comes earlier.
   */
  staffChanged(queueIndex: number): void {
    for (const group of this.groupsStartedBy[queueIndex]) {
      // People make no difference to a group that has nothing idle or nothing to do.
      if (group.idle > 0 && group.waiting > 0) group.isStale = true;
    }
  }

  /** Takes a load out of what waits, and books its wait. */
  leaveClass(unitClass: UnitClass, load: Load): void {
    const { recorder, now } = this.simulation;
    const group = this.groups[unitClass.compiled.group];
    unitClass.loads.remove(load);
    group.isUnsettled = true;
    load.waitsIn = null;
    group.waiting--;
    this.simulation.flow.checkMaximumWait(load);
    unitClass.waitingSize -= sizeOf(load, group.compiled);
    // Rounding must not leave a remainder that a launch rule could take for something that waits.
    if (unitClass.loads.length === 0) unitClass.waitingSize = 0;
    this.chargeClassWait(unitClass, load);
    recorder.leavesUnitQueue(group.compiled.index, load.weight, load.readyAt, now);
  }

  chargeClassWait(unitClass: UnitClass, load: Load): void {
    this.simulation.bookings.chargeWait(load, 0, unitClass.clock.elapsed, load.clockAtEntry);
  }

  /** A part of a waiting load is built first: its share leaves the queue, the rest goes on waiting from now. */
  bookSplit(unitClass: UnitClass, load: Load, split: Lot): void {
    const { recorder, now } = this.simulation;
    const { index } = this.groups[unitClass.compiled.group].compiled;
    recorder.leavesUnitQueue(index, split.pieces / split.job.quantity, load.readyAt, now);
    unitClass.clock.read(load.clockAtEntry, now);
  }

  /**
   * At the end of an instant: why each queue stands still, and what idle units wait for. A group in which nothing
   * happened waits for the same as before unless it waits for people and their cause has changed.
   */
  settle(): void {
    const { now, staff } = this.simulation;
    let peopleChanged = false;
    for (const queue of staff.queues) {
      const { cause } = queue;
      if (cause !== queue.settledCause) {
        queue.settledCause = cause;
        peopleChanged = true;
      }
      if (queue.tasks.length > 0) queue.clock.setCause(cause, now);
    }
    for (const group of this.groups) {
      if (group.isUnsettled) this.settleIdle(group);
      else if (!peopleChanged) continue;
      if (group.waiting === 0) continue;
      for (const unitClass of group.classes) {
        if (unitClass.loads.length > 0) unitClass.clock.setCause(this.causeOf(group, unitClass), now);
      }
    }
  }

  /** Books what waits or goes on when the replication ends. */
  finish(): void {
    const { recorder, now } = this.simulation;
    for (const group of this.groups) {
      for (const unit of group.units) this.setState(unit, unit.state);
      for (const unitClass of group.classes) {
        for (let load = unitClass.loads.first; load !== null; load = load.after) {
          recorder.leavesUnitQueue(group.compiled.index, load.weight, load.readyAt, now);
        }
      }
    }
  }

  setState(unit: Unit, state: number): void {
    const { recorder, now } = this.simulation;
    recorder.unitState(unit, now);
    unit.state = state;
    unit.stateSince = now;
  }

  /** Notes how full a machine is with what it now holds. */
  private measureContent(unit: Unit, { shaped }: UnitClass): void {
    const build = unit.loads as Load;
    shaped?.countLoad(build);
    unit.fill = shaped?.fill ?? build.space / this.groups[unit.group].compiled.capacity;
    unit.height = shaped?.height ?? 0;
    unit.partVolume = shaped?.partVolume ?? 0;
  }

  private canInterrupt(unitClass: UnitClass, unit: Unit, seed: Load): boolean {
    const { compiled, staff } = this.simulation;
    const { work } = unitClass.compiled.phases[0];
    if (!compiled.rushInterrupts || seed.rush !== 0 || work === null) return false;
    return staff.canInterrupt(work.queue, this.startNeed(unitClass, unit));
  }

  /** Milliseconds that must fit before the end of a window for the first phase of a run; 0 when it may pause. */
  private startNeed(unitClass: UnitClass, unit: Unit): number {
    const { compiled, stageWork } = this.simulation;
    const phase = unitClass.compiled.phases[0];
    const work = phase.work as CompiledWork;
    if (work.pausable) return 0;
    if (phase.what === 'run') {
      const { batchSampler } = unitClass.compiled;
      const { compiled: group } = this.groups[unit.group];
      if (!compiled.fitOnDrawn) {
        return largestInBatch(unitClass, group, (load, share) =>
          typicalRun(this.simulation, unitClass, load, share),
        );
      }
      return batchSampler === null
        ? // What is drawn for a part of a job is its share, but for the noise of single pieces.
          largestInBatch(unitClass, group, (load, share) => Math.round(share * stageWork.drawn(load)))
        : toMilliseconds(batchSampler.sample(unit.uniforms[phase.slot]));
    }
    const group = this.groups[unit.group].compiled;
    const change = materialChangeFor(group, unit, unitClass.compiled.material);
    return compiled.fitOnDrawn ? attendedDuration(unit, phase, change) : attendedTypical(phase, change);
  }

  /** The idle unit that holds the material, else the one with the shortest change, else the lowest number. */
  bestUnit(group: UnitGroup, material: number): Unit {
    let best: Unit | null = null;
    let shortest = Number.POSITIVE_INFINITY;
    for (const unit of group.units) {
      if (!unit.isCounted) continue;
      const change = materialChangeFor(group.compiled, unit, material);
      const length = unit.material === material ? -1 : (change?.typical ?? 0);
      if (best === null || length < shortest) {
        best = unit;
        shortest = length;
      }
    }
    return best as Unit;
  }

  private becomesStale(group: UnitGroup): void {
    group.isStale = true;
    group.isUnsettled = true;
    if (!group.compiled.launch.beforeClosing) return;
    // More set-ups for the same people bring the last call of the others forward.
    for (const queue of group.compiled.startQueues) this.staffChanged(queue);
  }

  private settleIdle(group: UnitGroup): void {
    group.isUnsettled = false;
    const state = group.waiting === 0 ? IDLE : group.mayLaunch ? WAITING_TO_START : WAITING_TO_FILL;
    for (const unit of group.units) {
      if (unit.isCounted && unit.state !== state) this.setState(unit, state);
    }
  }

  private causeOf(group: UnitGroup, unitClass: UnitClass): number {
    if (group.idle === 0) return group.units.some(isDown) ? CAUSE_MACHINE_DOWN : CAUSE_MACHINE;
    if (this.simulation.carriers.isMissing(group.compiled.carrier)) return CAUSE_CARRIER;
    if (!unitClass.mayLaunch) return CAUSE_BATCH;
    if (unitClass.isBlocked) return CAUSE_SHIFT;
    const { work } = unitClass.compiled.phases[0];
    return work === null ? CAUSE_SHIFT : this.simulation.staff.queues[work.queue].cause;
  }
}

function isDown(unit: Unit): boolean {
  return unit.isDown;
}
