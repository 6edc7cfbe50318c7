import { MILLISECONDS_PER_DAY, toMilliseconds } from '../kernel/clock.ts';
import { PHASE_TIMERS } from '../kernel/event-calendar.ts';
import type { CompiledPhase } from './compiled-lab.ts';
import { largestInBatch, overflows, typicalBuild } from './content.ts';
import { attendedTypical, materialChangeFor, typicalRun } from './durations.ts';
import { EVENT_GROUP_TIMER } from './events.ts';
import type { LaunchTimes } from './launch-times.ts';
import type { Load, Lot } from './load.ts';
import { typicalWork } from './outlook.ts';
import { earliestFit } from './presence.ts';
import { isBefore } from './rank.ts';
import type { Simulation } from './simulation.ts';
import { roomIn } from './space.ts';
import type { Unit } from './unit.ts';
import type { UnitClass } from './unit-class.ts';
import type { UnitGroup } from './unit-group.ts';

/** Decides when what waits may be launched, and sets timers for the moments at which that changes. */
export class LaunchRules {
  private readonly simulation: Simulation;
  /** For each group: elapsed times of its fixed launches over the plan, ascending. */
  private fixedTimes: readonly (readonly number[])[] = [];
  /** For each group: ends of attendance of those who set its machines up, ascending. */
  private closings: readonly (readonly number[])[] = [];
  /** For each group: when attendance begins again after a closing, ascending. */
  private openings: readonly (readonly number[])[] = [];
  private readonly closingIndex: Int32Array;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
    this.closingIndex = new Int32Array(simulation.compiled.unitGroups.length);
  }

  reset(times: LaunchTimes): void {
    const { fixedTimes } = times;
    this.fixedTimes = fixedTimes;
    this.closings = times.closings;
    this.openings = times.openings;
    this.closingIndex.fill(0);
    fixedTimes.forEach((times, group) => {
      if (times.length > 0) this.setTimer(this.simulation.units.groups[group], times[0]);
    });
  }

  timerRings(groupIndex: number): void {
    const group = this.simulation.units.groups[groupIndex];
    const { now } = this.simulation;
    // One that an earlier timer has replaced: what it was set for has been looked at again since.
    if (group.timerAt !== now) return;
    group.timerAt = Number.POSITIVE_INFINITY;
    group.isStale = true;
    const times = this.fixedTimes[groupIndex];
    while (group.nextFixedIndex < times.length && times[group.nextFixedIndex] <= now) {
      group.latestFixed = times[group.nextFixedIndex++];
    }
    if (group.nextFixedIndex < times.length) this.setTimer(group, times[group.nextFixedIndex]);
  }

  /** Works out whether a class may launch now; sets a timer for the next moment at which time alone changes it. */
  judge(group: UnitGroup, unitClass: UnitClass): void {
    unitClass.mayLaunch = false;
    unitClass.onlyReadyBefore = Number.POSITIVE_INFINITY;
    const first = unitClass.loads.first;
    if (first === null) return;
    const { pinned } = unitClass.compiled;
    if (pinned !== null) {
      this.holdsFrom(group, unitClass, this.simulation.localTime.toElapsed(pinned.from));
      return;
    }
    const { launch, capacity } = group.compiled;
    if (launch.fullShare !== null) {
      unitClass.mayLaunch =
        roomIn(unitClass.waitingSize) >= launch.fullShare * capacity || overflows(unitClass, group.compiled);
    }
    if (!unitClass.mayLaunch && launch.waitedHours !== null) {
      this.holdsFrom(group, unitClass, first.readyAt + toMilliseconds(launch.waitedHours));
    }
    if (!unitClass.mayLaunch && launch.beforeClosing) {
      const closing = this.nextClosing(group);
      const lastCall = this.lastCall(group, closing, unitClass);
      this.holdsFrom(group, unitClass, lastCall);
      if (unitClass.mayLaunch) this.setTimer(group, closing);
    }
    if (!unitClass.mayLaunch && launch.promiseAtRisk) {
      for (let load: Load | null = first; load !== null; load = load.after) {
        this.holdsFrom(group, unitClass, load.dueAt - this.typicalRemainder(load));
      }
    }
    if (!unitClass.mayLaunch) this.judgeFixed(group, unitClass);
  }

  /** A build that was decided on is given up a day after its time when none of its jobs is ready. */
  lookAtPinned(group: UnitGroup, unitClass: UnitClass): void {
    const { pinned } = unitClass.compiled;
    if (pinned === null || !unitClass.isPending) return;
    const { now, localTime } = this.simulation;
    const from = localTime.toElapsed(pinned.from);
    const end = from + MILLISECONDS_PER_DAY;
    if (now < end) this.setTimer(group, now < from ? from : end);
    else if (unitClass.loads.first === null) unitClass.isPending = false;
  }

  /** Whether a seed goes before another of its group: by rank, or at the last call by when its build would end. */
  isPreferred(group: UnitGroup, seed: Load, other: Load): boolean {
    const { launch } = group.compiled;
    if (launch.beforeClosing && launch.preferAttendedEnd) {
      const late = this.endsAfterAttendance(group, seed);
      const otherLate = this.endsAfterAttendance(group, other);
      if (late !== otherLate) return late < otherLate;
    }
    return isBefore(seed, other);
  }

  /**
   * Whether a run of a class may begin now: the equipment stays long enough, and what runs by itself falls into
   * hours in which it may. Judged on typical durations; a timer is set for when it becomes possible.
   */
  mayStartNow(group: UnitGroup, unitClass: UnitClass, unit: Unit): boolean {
    const { now } = this.simulation;
    const { allowedWindows, goesAt } = group;
    if (allowedWindows === null && goesAt === Number.POSITIVE_INFINITY) return true;
    const { phases, runPhase } = unitClass.compiled;
    const change = materialChangeFor(group.compiled, unit, unitClass.compiled.material);
    const isMachine = group.compiled.kind === 'machine';
    let attended = 0;
    let unattended = 0;
    let unloading = 0;
    phases.forEach((phase, position) => {
      if (position === runPhase) {
        unattended += isMachine
          ? typicalBuild(unitClass, group.compiled)
          : largestInBatch(unitClass, group.compiled, (load, share) =>
              typicalRun(this.simulation, unitClass, load, share),
            );
      } else if (phase.phase === 'first layers') return;
      else if (position > runPhase && phase.work !== null) unloading += phase.work.typical;
      else if (phase.what === 'change') unattended += change?.attended === false ? change.typical : 0;
      else if (phase.work === null) unattended += phase.typical + furtherCoolDown(phase, unitClass);
      else attended += attendedTypical(phase, change);
    });
    if (now + attended + unattended + unloading > goesAt) return false;
    if (allowedWindows === null || phases[runPhase].work !== null) return true;
    const start = earliestFit(allowedWindows, now + attended, unattended);
    if (start === now + attended) return true;
    this.setTimer(group, start - attended);
    return false;
  }

  /** Next end of attendance for the people who set the group up; Infinity when it never comes. */
  nextClosing(group: UnitGroup): number {
    const { index } = group.compiled;
    const closings = this.closings[index];
    while (
      this.closingIndex[index] < closings.length &&
      closings[this.closingIndex[index]] <= this.simulation.now
    ) {
      this.closingIndex[index]++;
    }
    return this.closingIndex[index] < closings.length
      ? closings[this.closingIndex[index]]
      : Number.POSITIVE_INFINITY;
  }

  /**
   * The latest moment at which set-up and warm-up typically still fit before closing, when the set-ups that
   * wait for the same people go first: rounds of set-ups among those on duty, then the warm-up. A change of
   * material is a part of the set-up.
   */
  private lastCall(group: UnitGroup, closing: number, unitClass: UnitClass): number {
    const { staff, units } = this.simulation;
    const { attended, alone } = this.typicalBeforeRun(group, unitClass);
    const [queueIndex] = group.compiled.startQueues;
    if (queueIndex === undefined) return closing - alone;
    const queue = staff.queues[queueIndex];
    // Whoever has the skill is meant, also for set-ups that need more of them at once.
    const isForSame = (index: number): boolean => staff.queues[index].compiled.skill === queue.compiled.skill;
    let setUps = 0;
    for (const other of staff.queues) if (isForSame(other.compiled.index)) setUps += other.setUpsWaiting;
    for (const other of units.groups) {
      if (other.compiled.launch.beforeClosing && other.compiled.startQueues.some(isForSame)) {
        setUps += Math.min(other.idle, other.waiting);
      }
    }
    const rounds = Math.ceil(Math.max(1, setUps) / Math.max(1, queue.onDuty));
    return closing - rounds * attended - alone;
  }

  /** Typical milliseconds with people and by itself from the launch of a class to its print. */
  private typicalBeforeRun(group: UnitGroup, unitClass: UnitClass): { attended: number; alone: number } {
    const { phases, runPhase, material } = unitClass.compiled;
    const change =
      group.idle === 0 ? null : materialChangeFor(group.compiled, group.bestUnit(material), material);
    let attended = 0;
    let alone = 0;
    for (let phase = 0; phase < runPhase; phase++) {
      if (phases[phase].what === 'change') alone += change?.attended === false ? change.typical : 0;
      else if (phases[phase].work === null) alone += phases[phase].typical;
      else attended += attendedTypical(phases[phase], change);
    }
    return { attended, alone };
  }

  /** When the next stretch of attendance begins after a closing. */
  private nextAttendance(group: UnitGroup, closing: number): number {
    const openings = this.openings[group.compiled.index];
    return openings.find((opening) => opening > closing) ?? Number.POSITIVE_INFINITY;
  }

  /** How long after the next attended hour a build at its last call would typically end; Infinity if before. */
  private endsAfterAttendance(group: UnitGroup, seed: Load): number {
    const { now } = this.simulation;
    const closing = this.nextClosing(group);
    const unitClass = seed.waitsIn as UnitClass;
    if (this.lastCall(group, closing, unitClass) > now) return Number.POSITIVE_INFINITY;
    const { attended, alone } = this.typicalBeforeRun(group, unitClass);
    const { phases, runPhase } = unitClass.compiled;
    const print = typicalBuild(unitClass, group.compiled);
    const behind = phases[runPhase + 1];
    const coolDown = behind?.phase === 'cool-down' ? behind.typical + furtherCoolDown(behind, unitClass) : 0;
    const end = now + attended + alone + print + coolDown;
    const late = end - this.nextAttendance(group, closing);
    return late < 0 ? Number.POSITIVE_INFINITY : late;
  }

  private judgeFixed(group: UnitGroup, unitClass: UnitClass): void {
    for (let load = unitClass.loads.first; load !== null; load = load.after) {
      if (load.readyAt < group.latestFixed) {
        unitClass.mayLaunch = true;
        unitClass.onlyReadyBefore = group.latestFixed;
        return;
      }
    }
  }

  private holdsFrom(group: UnitGroup, unitClass: UnitClass, from: number): void {
    if (from <= this.simulation.now) unitClass.mayLaunch = true;
    else this.setTimer(group, from);
  }

  private setTimer(group: UnitGroup, time: number): void {
    if (time >= group.timerAt) return;
    group.timerAt = time;
    this.simulation.calendar.schedule(time, PHASE_TIMERS, EVENT_GROUP_TIMER, group.compiled.index, 0);
  }

  /** Typical milliseconds of the route that is still before a load, this stage included. */
  private typicalRemainder(load: Load): number {
    const lot = load.lots as Lot;
    return typicalWork(lot.job.part.stages, load.pieces, lot.stage);
  }
}

/** Milliseconds by which the height of the build that is counted makes a phase longer. */
function furtherCoolDown({ phase }: CompiledPhase, { shaped }: UnitClass): number {
  return phase === 'cool-down' ? (shaped?.furtherCoolDown ?? 0) : 0;
}
