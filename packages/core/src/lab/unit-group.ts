import type { WorkingWindows } from '../kernel/working-windows.ts';
import type { CompiledUnitGroup } from './compiled-lab.ts';
import { materialChangeFor } from './durations.ts';
import type { Unit } from './unit.ts';
import type { UnitClass } from './unit-class.ts';

/** Machines or stations that are alike, in one replication. */
export class UnitGroup {
  readonly compiled: CompiledUnitGroup;
  readonly units: readonly Unit[];
  readonly classes: readonly UnitClass[];
  /** Those of them that are for one build each, which has been decided on. */
  readonly pinned: readonly UnitClass[];
  idle = 0;
  /** Loads that wait, over all classes. */
  waiting = 0;
  /** Elapsed time at which the equipment goes; Infinity when it stays. */
  goesAt = Number.POSITIVE_INFINITY;
  /** Position of its next hours. */
  hoursIndex = 0;
  /** When it may run with nobody there, people's hours included; null: always. */
  allowedWindows: WorkingWindows | null = null;
  /** Whether its idle units, or what waits for it, may wait for something else than when the last instant ended. */
  isUnsettled = true;
  /** Whether something changed since dispatch last found nothing to launch here. */
  isStale = false;
  /** Time of the earliest timer that is set, so that none is set twice; Infinity for none. */
  timerAt = Number.POSITIVE_INFINITY;
  /** Position of the next fixed launch time in the plan's list, and the latest one that has passed. */
  nextFixedIndex = 0;
  latestFixed = Number.NEGATIVE_INFINITY;
  /** What `pick` chose. */
  pickedClass: UnitClass | null = null;
  pickedUnit: Unit | null = null;

  constructor(compiled: CompiledUnitGroup, units: readonly Unit[], classes: readonly UnitClass[]) {
    this.compiled = compiled;
    this.units = units;
    this.classes = classes;
    this.pinned = classes.filter(({ compiled: { pinned } }) => pinned !== null);
  }

  reset(): void {
    this.idle = this.units.length;
    this.waiting = 0;
    this.goesAt = Number.POSITIVE_INFINITY;
    this.hoursIndex = 0;
    this.isUnsettled = true;
    this.isStale = false;
    this.timerAt = Number.POSITIVE_INFINITY;
    this.nextFixedIndex = 0;
    this.latestFixed = Number.NEGATIVE_INFINITY;
    this.pickedClass = null;
    this.pickedUnit = null;
    for (const unitClass of this.classes) unitClass.reset();
  }

  /** Whether a launch condition holds for anything that waits; else it waits for a batch to fill or for its time. */
  get mayLaunch(): boolean {
    return this.classes.some((unitClass) => unitClass.loads.length > 0 && unitClass.mayLaunch);
  }

  /** Whether a unit is kept for a build that has been decided on. */
  isKept(unit: Unit): boolean {
    return this.pinned.some(
      ({ isPending, compiled: { pinned } }) => isPending && pinned?.machine === unit.name,
    );
  }

  /** Whether no unit is idle but those that are kept. */
  get isTaken(): boolean {
    if (this.pinned.length === 0) return this.idle === 0;
    return !this.units.some((unit) => unit.isCounted && !this.isKept(unit));
  }

  /**
   * The idle unit for a class: the very one that is pinned, else that which holds the material, else the one with the
   * shortest change, else the lowest number.
   *
   * @returns null when there is none
   */
  unitFor({ compiled: { material, pinned } }: UnitClass): Unit | null {
    if (this.pinned.length === 0) return this.bestUnit(material);
    if (pinned === null) return this.isTaken ? null : this.bestUnit(material);
    return this.units.find((unit) => unit.isCounted && unit.name === pinned.machine) ?? null;
  }

  /**
   * The idle unit that holds the material, else the one with the shortest change, else the lowest number; one that is
   * kept only where there is no other.
   */
  bestUnit(material: number): Unit {
    const spares = this.pinned.length > 0 && !this.isTaken;
    let best: Unit | null = null;
    let shortest = Number.POSITIVE_INFINITY;
    for (const unit of this.units) {
      if (!unit.isCounted || (spares && this.isKept(unit))) continue;
      const change = materialChangeFor(this.compiled, unit, material);
      const length = unit.material === material ? -1 : (change?.typical ?? 0);
      if (best === null || length < shortest) {
        best = unit;
        shortest = length;
      }
    }
    return best as Unit;
  }
}
