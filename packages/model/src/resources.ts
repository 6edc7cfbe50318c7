import type { ShapedBuilds } from './build-time.ts';
import type { Duration } from './distribution.ts';
import type { AttendedWork } from './stage.ts';
import type { Absence, BuildFailure, EquipmentConditions, Leave } from './trouble.ts';

/** People who share skills and hours. Individuals are named `technicians 1`, `technicians 2`, … */
export interface PeopleGroup {
  readonly name: string;
  /** Whole number; 0: there is nobody of this kind. */
  readonly count: number;
  /** Name of a {@link WorkingCalendar}. */
  readonly calendar: string;
  readonly skills: readonly string[];
  /** Share of the hours on duty that goes to meetings, ordering, advice: 0 to below 1. */
  readonly otherDutiesShare: number;
  /** How far work that may not pause may overrun the end of the window before it pauses, hours. */
  readonly graceHours: number;
  readonly leave: readonly Leave[];
  readonly absence: Absence | null;
}

/** Which class of additive manufacturing process a machine belongs to (ISO/ASTM 52900). */
export type Process = 'MEX' | 'VPP' | 'PBF' | 'other';

/** When a build is launched. Any condition that holds is enough; none at all means at once. */
export interface LaunchRule {
  /** Share of the capacity, 0 to 1; 0 launches with the first part. Null: fill alone never launches. */
  readonly fullShare: number | null;
  /** Hours that the first-ranked job has waited since it was ready for building. */
  readonly waitedHours: number | null;
  /** At the last call before closing time (the end of attendance for the day). */
  readonly beforeClosing: boolean;
  /** Weekly launch times in local hours since Monday 00:00, for parts ready strictly before. */
  readonly fixedHours: readonly number[] | null;
  /** As soon as waiting longer puts the promise of a waiting job at risk. */
  readonly promiseAtRisk: boolean;
  /** At the last call prefer the build that ends nearest to, but not before, the next attended hour. */
  readonly preferAttendedEnd: boolean;
}

/** What it takes to go from one material to another on a machine. */
export interface MaterialChange {
  /** Material names; null stands for any. The first entry that matches counts. */
  readonly from: string | null;
  readonly to: string | null;
  readonly duration: Duration;
  /** Attended changes lengthen the set-up; the others run by themselves after it. */
  readonly attended: boolean;
}

/** Machines that are alike. Individuals are named `resin 1`, `resin 2`, … */
export interface MachineGroup extends EquipmentConditions {
  readonly name: string;
  readonly process: Process;
  /** Whole number; 0: the lab owns none of this kind. */
  readonly count: number;
  /** Units of space in one build; a piece takes `PartType.space`. */
  readonly capacity: number;
  /** Most jobs that share a build; null: as many as fit. */
  readonly mostJobs: number | null;
  /** How builds are packed and timed from shapes; null when the parts state their space and time. */
  readonly shaped: ShapedBuilds | null;
  /** Attended file preparation of the build; the content is fixed when it starts. */
  readonly prepare: AttendedWork | null;
  readonly setUp: AttendedWork | null;
  readonly materialChanges: readonly MaterialChange[];
  readonly warmUp: Duration | null;
  /** The beginning of the print that somebody has to watch; a part of the print time. */
  readonly firstLayers: AttendedWork | null;
  readonly coolDown: CoolDown | null;
  readonly unload: AttendedWork | null;
  readonly launch: LaunchRule;
  /** Name of a {@link CarrierPool}; a build holds one until a stage empties it, else to the end of its stage. */
  readonly carrier: string | null;
  /** What is loaded at the start of the plan; null: nothing, so that the first build pays no change. */
  readonly initialMaterial: string | null;
  readonly failure: BuildFailure | null;
}

export interface CoolDown {
  readonly duration: Duration;
  /** `outside`: the build unit is taken out (the unload work is the swap) and cools elsewhere. */
  readonly where: 'machine' | 'outside';
}

/** Tanks, platforms, removable build units, baskets. */
export interface CarrierPool {
  readonly name: string;
  readonly count: number;
}

/** Stations that are alike: wash, cure, dissolve, blast. */
export interface StationGroup extends EquipmentConditions {
  readonly name: string;
  /** Whole number; 0: the lab owns none of this kind. */
  readonly count: number;
  /** How much one batch holds, in `unit` (box volume: mm3 of the bounding boxes); Infinity is not allowed, a large number is. */
  readonly capacity: number;
  readonly unit: 'parts' | 'jobs' | 'builds' | 'box volume';
  /** Start when at least this share is waiting (0: at once) … */
  readonly fullShare: number;
  /** … or when the first-ranked has waited this long. Null: no such limit. */
  readonly waitedHours: number | null;
}
