import { MACHINE_STATES, STATION_STATES } from '@buildweek/results';
import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import { type CompiledUnitClass, DRAW_SLOTS } from './compiled-lab.ts';
import { sizeOf, takeBatch, takeBuild } from './content.ts';
import { fixDurations, materialChangeFor, openStreams } from './durations.ts';
import { EVENT_PHASE_ENDS } from './events.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';
import { StartingPeople } from './starting-people.ts';
import { Unit } from './unit.ts';
import { UnitClass } from './unit-class.ts';
import { UnitGroup } from './unit-group.ts';
import { stateAtRest } from './unit-states.ts';

/** Machines and stations: what waits for them, what they hold, the phases they go through. */
export class UnitFloor {
  readonly groups: readonly UnitGroup[];
  readonly units: readonly Unit[];
  readonly classes: readonly UnitClass[];
  private readonly simulation: Simulation;
  private readonly startingPeople: StartingPeople;
  /** For each attended queue: the groups that need people of its skill to start. */
  private readonly groupsStartedBy: readonly (readonly UnitGroup[])[];

  constructor(simulation: Simulation) {
    const { compiled } = simulation;
    this.simulation = simulation;
    this.startingPeople = new StartingPeople(simulation);
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
    let unitClass = this.classes[classIndex];
    const group = this.groups[unitClass.compiled.group];
    if (group.pinned.length > 0) unitClass = pinnedFor(group, load, unitClass);
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
    for (const unitClass of group.pinned) launch.lookAtPinned(group, unitClass);
    for (const unitClass of group.classes) {
      launch.judge(group, unitClass);
      const { seed } = unitClass;
      if (seed === null || group.idle === 0 || carriers.isMissing(group.compiled.carrier)) continue;
      if (best !== null && !launch.isPreferred(group, seed, best)) continue;
      const unit = group.unitFor(unitClass);
      if (unit === null) continue;
      unitClass.isBlocked = !launch.mayStartNow(group, unitClass, unit);
      if (unitClass.isBlocked) continue;
      if (
        !this.startingPeople.find(unitClass, unit) &&
        !this.startingPeople.canBeFreed(unitClass, unit, seed)
      )
        continue;
      best = seed;
      group.pickedClass = unitClass;
      group.pickedUnit = unit;
    }
    return best;
  }

  /** Launches what `pick` chose. */
  launchPicked(group: UnitGroup): void {
    const { now, flow, runs, carriers } = this.simulation;
    const unitClass = group.pickedClass as UnitClass;
    const unit = group.pickedUnit as Unit;
    // Another class may have been looked at since, so the people are looked for again.
    if (!this.startingPeople.find(unitClass, unit)) {
      // Only for a rush seed, with somebody to interrupt; whoever is freed may have other duties.
      this.startingPeople.free(unitClass, unit);
      if (!this.startingPeople.find(unitClass, unit)) return;
    }
    const change = materialChangeFor(group.compiled, unit, unitClass.compiled.material);
    unitClass.clock.advance(now);
    unitClass.isPending = false;
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
    const { recorder, presence, now, tracer } = this.simulation;
    recorder.unitState(unit, now, presence);
    tracer?.unitState(unit);
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

  private becomesStale(group: UnitGroup): void {
    group.isStale = true;
    group.isUnsettled = true;
    if (!group.compiled.launch.beforeClosing) return;
    // More set-ups for the same people bring the last call of the others forward.
    for (const queue of group.compiled.startQueues) this.staffChanged(queue);
  }
}

/** The class for a load that has been decided on; else the one to which it belongs. */
function pinnedFor(group: UnitGroup, load: Load, unitClass: UnitClass): UnitClass {
  const { number } = (load.lots as Lot).job;
  const own = group.pinned.find(
    ({ isPending, compiled: { pinned } }) =>
      isPending && pinned?.ofClass === unitClass.compiled.index && pinned.jobs.has(number),
  );
  return own ?? unitClass;
}
