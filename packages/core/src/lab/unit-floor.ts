import { MACHINE_STATES, STATION_STATES } from '@buildweek/results';
import { toMilliseconds } from '../kernel/clock.ts';
import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import { CAUSE_BATCH, CAUSE_CARRIER, CAUSE_MACHINE, CAUSE_SHIFT } from '../observe/wait-clock.ts';
import { type CompiledPhase, type CompiledUnitClass, DRAW_SLOTS } from './compiled-lab.ts';
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
import type { Task } from './task.ts';
import { Unit } from './unit.ts';
import { UnitClass } from './unit-class.ts';
import { UnitGroup } from './unit-group.ts';

const IDLE = MACHINE_STATES.indexOf('idle');
const WAITING_TO_START = MACHINE_STATES.indexOf('waiting to start');

/** Machines and stations: what waits for them, what they hold, the phases they go through. */
export class UnitFloor {
  readonly groups: readonly UnitGroup[];
  readonly units: readonly Unit[];
  readonly classes: readonly UnitClass[];
  private readonly simulation: Simulation;
  private readonly carriersFree: Int32Array;
  /** For each attended queue: the groups that need its people to start. */
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
    this.carriersFree = new Int32Array(compiled.carriers.length);
    this.groupsStartedBy = compiled.attendedQueues.map((queue) =>
      this.groups.filter((group) => group.compiled.startQueues.includes(queue.index)),
    );
  }

  reset(): void {
    const { compiled } = this.simulation;
    for (const group of this.groups) {
      group.reset();
      for (const unit of group.units) {
        unit.reset(group.compiled.initialMaterial);
        openStreams(this.simulation, unit, group.compiled);
      }
    }
    compiled.carriers.forEach((carrier, index) => {
      this.carriersFree[index] = carrier.count;
    });
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
    const { launch } = this.simulation;
    const { carrier } = group.compiled;
    let best: Load | null = null;
    for (const unitClass of group.classes) {
      launch.judge(group, unitClass);
      const { seed } = unitClass;
      if (seed === null || group.idle === 0 || (carrier >= 0 && this.carriersFree[carrier] <= 0)) continue;
      if (best !== null && !launch.isPreferred(group, seed, best)) continue;
      const unit = this.bestUnit(group, unitClass.compiled.material);
      if (!this.findStaff(unitClass, unit)) continue;
      best = seed;
      group.pickedClass = unitClass;
      group.pickedUnit = unit;
    }
    return best;
  }

  /** Finds the people for the first phase of a run; true when nobody is needed. */
  findStaff(unitClass: UnitClass, unit: Unit): boolean {
    const phase = unitClass.compiled.phases[0];
    if (phase.work === null) return true;
    const { staff } = this.simulation;
    return staff.find(phase.work.queue, phase.work.pausable ? 0 : this.needOf(unitClass, unit, phase));
  }

  /** Launches what `pick` chose. */
  launchPicked(group: UnitGroup): void {
    const { now, tasks } = this.simulation;
    const unitClass = group.pickedClass as UnitClass;
    const unit = group.pickedUnit as Unit;
    // Another class may have been looked at since, so the people are looked for again.
    this.findStaff(unitClass, unit);
    const change = materialChangeFor(group.compiled, unit, unitClass.compiled.material);
    unitClass.clock.advance(now);
    if (group.compiled.kind === 'machine') {
      const build = takeBuild(this.simulation, unitClass, group.compiled);
      unit.fill = build.space / group.compiled.capacity;
      unit.loads = build;
      build.kind = group.compiled.kindRank;
      build.carrier = group.compiled.carrier;
      if (build.carrier >= 0) this.carriersFree[build.carrier]--;
      unit.material = unitClass.compiled.material;
    } else {
      unit.loads = takeBatch(this.simulation, unitClass, unit, group.compiled);
    }
    unit.unitClass = unitClass.compiled;
    group.idle--;
    this.becomesStale(group);
    fixDurations(this.simulation, unit, unitClass, group.compiled, change);
    const phase = unitClass.compiled.phases[0];
    if (phase.work === null) {
      unit.phase = -1;
      this.phaseEnds(unit);
    } else {
      unit.phase = 0;
      tasks.start(this.createTask(unit, phase, attendedTypical(phase, change)));
    }
  }

  /** Puts a build into a machine whose print goes on when the plan starts; the caller sets its end. */
  hold(unit: Unit, unitClass: CompiledUnitClass, build: Load, material: string | null): void {
    const group = this.groups[unit.group];
    const { carrier } = group.compiled;
    unit.loads = build;
    unit.unitClass = unitClass;
    unit.material =
      material === null ? unitClass.material : this.simulation.compiled.materials.indexOf(material);
    unit.fill = build.space / group.compiled.capacity;
    build.carrier = carrier;
    if (carrier >= 0) this.carriersFree[carrier]--;
    fixDurations(this.simulation, unit, this.classes[unitClass.index], group.compiled, null);
    // What is unattended is over at the stated time: nothing cools down after it.
    for (let phase = unitClass.runPhase + 1; phase < unitClass.phases.length; phase++) {
      if (unitClass.phases[phase].work === null) unit.durations[phase] = 0;
    }
    unit.phase = unitClass.runPhase;
    unit.phaseStartedAt = this.simulation.now;
    unit.stamp++;
    group.idle--;
    this.setState(unit, unitClass.phases[unit.phase].state);
  }

  /** A phase of a unit is over: on to the next, or the unit is free. */
  phaseEnds(unit: Unit): void {
    const { phases } = unit.unitClass as CompiledUnitClass;
    for (;;) {
      unit.phase++;
      if (unit.phase === phases.length) {
        this.runEnds(unit);
        return;
      }
      const phase = phases[unit.phase];
      if (phase.work !== null) {
        this.setState(unit, phase.waitState);
        // A set-up behind the preparation of the build may include a change of material.
        this.simulation.tasks.enqueue(this.createTask(unit, phase, unit.typicals[unit.phase]));
        return;
      }
      if (unit.durations[unit.phase] > 0 || phase.what === 'run') {
        this.beginUnattended(unit, phase);
        return;
      }
    }
  }

  unattendedPhaseEnds(index: number, stamp: number): void {
    const unit = this.units[index];
    if (unit.stamp !== stamp) return;
    const { flow, now, tracer } = this.simulation;
    const phase = (unit.unitClass as CompiledUnitClass).phases[unit.phase];
    for (let load = unit.loads; load !== null; load = load.nextInUnit) {
      flow.chargeWork(load, phase.stepOffset, now - unit.phaseStartedAt);
    }
    tracer?.unit('step ends', unit, phase.phase);
    this.phaseEnds(unit);
  }

  attendedPhaseStarts(unit: Unit): void {
    this.setState(unit, (unit.unitClass as CompiledUnitClass).phases[unit.phase].state);
  }

  attendedPhasePauses(unit: Unit): void {
    this.setState(unit, (unit.unitClass as CompiledUnitClass).phases[unit.phase].waitState);
  }

  /** Somebody who could start machines or stations has nothing to do, or goes: then the last call comes earlier. */
  staffChanged(queueIndex: number): void {
    for (const group of this.groupsStartedBy[queueIndex]) group.isStale = true;
  }

  releaseCarrier(load: Load): void {
    const { compiled } = this.simulation;
    this.carriersFree[load.carrier]++;
    for (const group of compiled.carriers[load.carrier].groups) this.groups[group].isStale = true;
    load.carrier = -1;
  }

  /** Position of the cool-down among the steps of a build stage: the last but one. */
  coolDownStep(classIndex: number): number {
    const { phases } = this.classes[classIndex].compiled;
    const prepares = phases.some((phase) => phase.phase === 'prepare') ? 1 : 0;
    return prepares + 3;
  }

  /** Takes a load out of what waits, and books its wait. */
  leaveClass(unitClass: UnitClass, load: Load): void {
    const { recorder, now } = this.simulation;
    const group = this.groups[unitClass.compiled.group];
    unitClass.loads.remove(load);
    unitClass.waitingSize -= sizeOf(load, group.compiled);
    // Rounding must not leave a remainder that a launch rule could take for something that waits.
    if (unitClass.loads.length === 0) unitClass.waitingSize = 0;
    this.chargeClassWait(unitClass, load);
    recorder.leavesUnitQueue(group.compiled.index, load.weight, load.readyAt, now);
  }

  chargeClassWait(unitClass: UnitClass, load: Load): void {
    this.simulation.flow.chargeWait(load, 0, unitClass.clock.elapsed, load.clockAtEntry);
  }

  /** A part of a waiting load is built first: its share leaves the queue, the rest goes on waiting from now. */
  bookSplit(unitClass: UnitClass, load: Load, split: Lot): void {
    const { recorder, now } = this.simulation;
    const { index } = this.groups[unitClass.compiled.group].compiled;
    recorder.leavesUnitQueue(index, split.pieces / split.job.quantity, load.readyAt, now);
    unitClass.clock.read(load.clockAtEntry, now);
  }

  /** At the end of an instant: why each queue stands still, and what idle units wait for. */
  settle(): void {
    const { now, staff } = this.simulation;
    for (const group of this.groups) {
      if (group.idle > 0) this.settleIdle(group);
      for (const unitClass of group.classes) {
        if (unitClass.loads.length > 0) unitClass.clock.setCause(this.causeOf(group, unitClass), now);
      }
    }
    for (const queue of staff.queues) {
      if (queue.tasks.length > 0) queue.clock.setCause(queue.cause, now);
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

  /** Milliseconds that must fit before the end of a window for the first phase of a run. */
  private needOf(unitClass: UnitClass, unit: Unit, phase: CompiledPhase): number {
    const { compiled, flow } = this.simulation;
    const work = phase.work as NonNullable<CompiledPhase['work']>;
    if (phase.what === 'run') {
      const { batchSampler } = unitClass.compiled;
      const { compiled: group } = this.groups[unit.group];
      if (!compiled.fitOnDrawn) {
        return largestInBatch(unitClass, group, (load) => typicalRun(this.simulation, unitClass, work, load));
      }
      return batchSampler === null
        ? largestInBatch(unitClass, group, (load) => flow.stageWork(load))
        : toMilliseconds(batchSampler.sample(unit.uniforms[phase.slot]));
    }
    const group = this.groups[unit.group].compiled;
    const change = materialChangeFor(group, unit, unitClass.compiled.material);
    return compiled.fitOnDrawn ? attendedDuration(unit, phase, change) : attendedTypical(phase, change);
  }

  private createTask(unit: Unit, phase: CompiledPhase, typical: number): Task {
    const load = unit.loads as Load;
    const work = phase.work as NonNullable<CompiledPhase['work']>;
    const group = this.groups[unit.group].compiled;
    return this.simulation.tasks.create(
      work,
      load,
      unit,
      phase.stepOffset,
      unit.durations[unit.phase],
      typical,
      group.kindRank,
      group.kind === 'machine' && unit.phase < (unit.unitClass as CompiledUnitClass).runPhase,
    );
  }

  private beginUnattended(unit: Unit, phase: CompiledPhase): void {
    const { calendar, now, tracer } = this.simulation;
    this.setState(unit, phase.state);
    unit.phaseStartedAt = now;
    unit.stamp++;
    calendar.schedule(now + unit.durations[unit.phase], PHASE_ENDS, EVENT_PHASE_ENDS, unit.index, unit.stamp);
    tracer?.unit('step starts', unit, phase.phase);
  }

  private runEnds(unit: Unit): void {
    const { flow, recorder, now, tracer } = this.simulation;
    const group = this.groups[unit.group];
    const first = unit.loads as Load;
    recorder.runEnds(unit, now);
    unit.loads = null;
    unit.unitClass = null;
    unit.phase = -1;
    unit.stamp++;
    this.setState(unit, IDLE);
    group.idle++;
    this.becomesStale(group);
    if (group.compiled.outsideCoolDown !== null && first.lots !== null) {
      flow.beginWait(first, first.tailWork[0]);
      tracer?.load('step starts', first, 'cool-down');
      return;
    }
    if (first.lots === null) {
      // A machine that was busy at the start with nothing of ours in it.
      if (first.carrier >= 0) this.releaseCarrier(first);
      flow.dropLoad(first);
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

  /** The idle unit that holds the material, else the one with the shortest change, else the lowest number. */
  private bestUnit(group: UnitGroup, material: number): Unit {
    let best: Unit | null = null;
    let shortest = Number.POSITIVE_INFINITY;
    for (const unit of group.units) {
      if (unit.unitClass !== null) continue;
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
    if (!group.compiled.launch.beforeClosing) return;
    // More set-ups for the same people bring the last call of the others forward.
    for (const queue of group.compiled.startQueues) this.staffChanged(queue);
  }

  private settleIdle(group: UnitGroup): void {
    const state = group.hasWaiting ? WAITING_TO_START : IDLE;
    for (const unit of group.units) {
      if (unit.unitClass === null && unit.state !== state) this.setState(unit, state);
    }
  }

  private causeOf(group: UnitGroup, unitClass: UnitClass): number {
    if (group.idle === 0) return CAUSE_MACHINE;
    const { carrier } = group.compiled;
    if (carrier >= 0 && this.carriersFree[carrier] <= 0) return CAUSE_CARRIER;
    if (!unitClass.mayLaunch) return CAUSE_BATCH;
    const { work } = unitClass.compiled.phases[0];
    return work === null ? CAUSE_SHIFT : this.simulation.staff.queues[work.queue].cause;
  }
}
