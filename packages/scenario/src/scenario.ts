import type {
  AttendedWork,
  BuildSpace,
  CarrierPool,
  CountDistribution,
  DispatchRules,
  Distribution,
  Duration,
  Economics,
  EquipmentConditions,
  EquipmentCost,
  HourSpan,
  MachineGroup,
  MaterialCost,
  PartCost,
  PeopleCost,
  PeopleGroup,
  PrintTime,
  ProfileSpan,
  RequesterChanges,
  StaffRules,
  StationGroup,
  StudySettings,
} from '@buildweek/model';
import type { ChangeWording } from './change/change-wording.ts';
import type { MeshOrientation, MeshUnit } from './shape-reader.ts';
import type { SourcePath } from './source/source-node.ts';
import type { AbsenceWording } from './words/absence.ts';
import type { Finish } from './words/finish.ts';
import type { Currency, MaterialPrice } from './words/money.ts';
import type { PromiseWording } from './words/promise.ts';
import type { MaximumWaitWording, RejectWording } from './words/rejects.ts';
import type { OutsideTimeWording, SendOutConditions } from './words/sent-out.ts';
import type { Size } from './words/size.ts';
import type { SizeTerm, StageTime } from './words/stage-time.ts';
import type { TargetWording } from './words/target.ts';

/**
 * A scenario file that has been checked: what it says, with defaults and machine classes filled in, in base
 * units (hours, shares of one), before names are looked up and dates are counted from the start of the plan.
 * Its lists have the order of the file.
 */
export interface Scenario {
  readonly name: string;
  /** Monday on which the plan starts, in days since 1970-01-01. */
  readonly startDay: number;
  /** Name in the IANA time zone database; null: no clock changes. */
  readonly zone: string | null;
  readonly settings: StudySettings;
  readonly calendars: readonly ScenarioCalendar[];
  /** Days on which no calendar has a window that starts, as days since 1970-01-01. */
  readonly closedDays: readonly number[];
  /** Name of the calendar of promises; null: the first, or day and night when there is none. */
  readonly labHours: string | null;
  readonly people: readonly ScenarioPeople[];
  readonly machines: readonly ScenarioMachine[];
  readonly stations: readonly ScenarioStation[];
  readonly carriers: readonly CarrierPool[];
  readonly routes: readonly ScenarioRoute[];
  readonly parts: readonly ScenarioPart[];
  readonly demand: readonly ScenarioDemand[];
  readonly dispatch: DispatchRules;
  /** When what stands in the lab stands so; null: at the start of the plan. */
  readonly now: ScenarioInstant | null;
  readonly jobsAtStart: readonly ScenarioJobAtStart[];
  readonly machinesAtStart: readonly ScenarioMachineAtStart[];
  readonly targets: readonly ScenarioTarget[];
  /** Null: it says nothing of money. */
  readonly money: ScenarioMoney | null;
  readonly staff: ScenarioStaff;
}

/** What a scenario says of money, before it is looked up what of it the lab needs. */
export interface ScenarioMoney
  extends Omit<Economics, 'currency' | 'equipment' | 'people' | 'materials' | 'parts'> {
  readonly currency: Currency;
  readonly machines: readonly EquipmentCost[];
  readonly stations: readonly EquipmentCost[];
  /** Those that say what an hour costs. */
  readonly people: readonly PeopleCost[];
  readonly materials: readonly ScenarioMaterialCost[];
  readonly parts: readonly PartCost[];
}

export interface ScenarioMaterialCost extends Omit<MaterialCost, 'pricePerKilogram'> {
  /** Null: what is said of it is wrong or missing, which has been reported. */
  readonly price: MaterialPrice | null;
}

/** Whom one might have when, and what everybody's hours are held against. */
export interface ScenarioStaff {
  readonly options: readonly StaffOption[];
  readonly rules: StaffRules;
}

/** A way of staffing the lab: the changes of the scenario that make it. */
export interface StaffOption {
  readonly name: string;
  /** What it means in plain words; empty where only the changes say it. */
  readonly meaning: string;
  readonly changes: readonly ChangeWording[];
}

/** Hours of a week with their exceptions. */
export interface ScenarioCalendar {
  readonly name: string;
  /** Hours since Monday 00:00. */
  readonly weekly: readonly HourSpan[];
  /** Days since 1970-01-01, of this calendar alone. */
  readonly closedDays: readonly number[];
  readonly extra: readonly ScenarioExtraWindow[];
  /** Of a calendar file: the windows of days that are not as in the usual week; those on closed days fall away. */
  readonly shifts?: readonly ScenarioExtraWindow[];
}

/** A window on one date. */
export interface ScenarioExtraWindow {
  /** Days since 1970-01-01. */
  readonly day: number;
  /** Hours since midnight of that day. */
  readonly span: HourSpan;
}

/** A group of people, with dates of leave and with absence as a share of days. */
export interface ScenarioPeople extends Omit<PeopleGroup, 'leave' | 'absence'> {
  readonly leave: readonly ScenarioLeave[];
  readonly absence: AbsenceWording | null;
}

export interface ScenarioLeave {
  /** Number of the person in the group, from 1. */
  readonly person: number;
  /** Days since 1970-01-01, both included. */
  readonly firstDay: number;
  readonly lastDay: number;
}

/** A machine group; null capacity: one build, of which each part type says its share. */
export interface ScenarioMachine extends Omit<MachineGroup, 'capacity'> {
  readonly capacity: number | null;
  /** Build space of its class, for what it could hold when it says nothing of its own; null: no class. */
  readonly usualSpace: BuildSpace | null;
  /** Worded share of parts that the class finds bad behind the build; null: no class. */
  readonly usualRejects: string | null;
}

/** Attended work whose skill may be left to the group it is done at. */
export interface ScenarioWork extends Omit<AttendedWork, 'skill'> {
  readonly skill: string | null;
}

/** What is done at a station, as far as a stage or a station says it. Undefined: not said there. */
export interface StationTimes {
  readonly run: StageTime | undefined;
  readonly load: ScenarioWork | null | undefined;
  readonly unload: ScenarioWork | null | undefined;
  /** Skill of the people who load, unload and stay where that is needed. */
  readonly by: string | undefined;
  /** Whether somebody stays while it runs. */
  readonly attended: boolean | undefined;
  readonly persons: number | undefined;
  readonly pausable: boolean | undefined;
}

export interface ScenarioStation extends EquipmentConditions {
  readonly name: string;
  readonly count: number;
  readonly capacity: number;
  readonly unit: StationGroup['unit'];
  readonly fullShare: number;
  readonly waitedHours: number | null;
  /** For stages that do not say it themselves. */
  readonly times: StationTimes;
}

export interface ScenarioRoute {
  readonly name: string;
  readonly stages: readonly ScenarioStage[];
}

interface ScenarioStageCommon {
  readonly name: string;
  /** Null: follows from what is done and where. */
  readonly level: 'job' | 'build' | null;
  readonly move: 'per job' | 'per build';
  readonly emptiesCarrier: boolean;
  /** Finishes of the parts that it is done for; null: for all. */
  readonly finishes: readonly Finish[] | null;
  readonly maximumWait: MaximumWaitWording | null;
  readonly rejects: RejectWording | null;
}

export interface ScenarioWorkStage extends ScenarioStageCommon {
  readonly kind: 'work';
  /** Its duration is that of a part whose size adds nothing. */
  readonly work: AttendedWork;
  readonly basis: 'job' | 'part' | 'build';
  readonly bySize: readonly SizeTerm[];
}

/** A stage on a machine or at a station; which of the two, the name decides. */
export interface ScenarioPlacedStage extends ScenarioStageCommon {
  readonly kind: 'placed';
  readonly on: string;
  readonly times: StationTimes;
}

export interface ScenarioWaitStage extends ScenarioStageCommon {
  readonly kind: 'wait';
  readonly duration: Duration;
  /** Chance that the requester has to be asked, which this stage waits for; null: a plain wait. */
  readonly requesterChance: number | null;
}

export type ScenarioStage = ScenarioWorkStage | ScenarioPlacedStage | ScenarioWaitStage;

export interface ScenarioPart {
  readonly name: string;
  readonly route: string;
  readonly material: string;
  readonly settings: string;
  /** How much of a build one part takes: a number of parts that fill it, a share of it, or one part's place. */
  readonly space: { readonly fits: number } | { readonly share: number } | null;
  readonly print: PrintTime | null;
  readonly shape: ScenarioShape | null;
  readonly finish: Finish;
  /** Times of its own at stages of its route. */
  readonly times: readonly ScenarioPartTimes[];
}

/** What is said of the shape of a part; the measures that are not said are null. */
export type ScenarioShape =
  | {
      readonly kind: 'size';
      /** As it stands in a build. */
      readonly size: Size;
      readonly volume: number;
      readonly surface: number | null;
      readonly supportedVolume: number | null;
      readonly supportContact: number | null;
    }
  | {
      readonly kind: 'mesh';
      readonly path: string;
      /** Of the numbers in the file; null: the file says it. */
      readonly unit: MeshUnit | null;
      readonly orientation: MeshOrientation;
    };

export interface ScenarioPartTimes {
  readonly stage: string;
  readonly takes: StageTime | null;
  readonly load: Duration | null;
  readonly unload: Duration | null;
}

export interface ScenarioDemand {
  readonly name: string;
  readonly part: string;
  readonly arrivals: ScenarioArrivals;
  readonly pieces: CountDistribution;
  readonly rushShare: number;
  readonly promise: PromiseWording;
  readonly rushPromise: PromiseWording;
  /** Hour of the day after which a file counts for the next working day. */
  readonly cutOffHour: number | null;
  readonly changes: RequesterChanges;
  /** Null: never. */
  readonly sentOut: ScenarioSendOut | null;
}

/** When jobs of a demand are made outside. */
export interface ScenarioSendOut {
  readonly conditions: SendOutConditions;
  /** Whether the demand says so itself, or all jobs are meant. */
  readonly isOwn: boolean;
  readonly takes: OutsideTimeWording;
}

export type ScenarioArrivals =
  | {
      readonly kind: 'poisson';
      readonly jobsPerWeek: number;
      readonly growthPerMonth: number;
      /** Coefficient of variation of the factor on each week; 0 is none. */
      readonly weekVariation: number;
      readonly jobsAtOnce: CountDistribution;
      readonly when: ScenarioProfile;
    }
  | { readonly kind: 'renewal'; readonly gap: Distribution; readonly jobsAtOnce: CountDistribution }
  | { readonly kind: 'dated'; readonly jobs: readonly ScenarioDatedJob[] }
  | { readonly kind: 'kept in the lab'; readonly jobs: number };

/** When in the week jobs arrive: in named hours, in spans with weights, or at any time. Null: in lab hours. */
export type ScenarioProfile =
  | { readonly hours: string }
  | { readonly spans: readonly ProfileSpan[] }
  | 'any time'
  | null;

export interface ScenarioDatedJob {
  readonly at: ScenarioInstant;
  readonly pieces: number | null;
  readonly rush: boolean | null;
}

/** A moment of the wall clock. */
export interface ScenarioInstant {
  /** Days since 1970-01-01. */
  readonly day: number;
  /** Hours since midnight. */
  readonly hour: number;
}

export interface ScenarioJobAtStart {
  /** Null: it is called by its number. */
  readonly name: string | null;
  /** Name of a demand. */
  readonly demand: string;
  readonly pieces: number;
  readonly rush: boolean;
  /** Null: at the start of the plan. */
  readonly arrived: ScenarioInstant | null;
  /** Null: no promise. */
  readonly due: ScenarioInstant | null;
  readonly stage: string;
  readonly remainingHours: number | null;
  /** Name of the individual machine that holds it, as `resin 2`; null: it waits or is worked on. */
  readonly machine: string | null;
}

export interface ScenarioMachineAtStart {
  /** Name of the individual, as `resin 2`. */
  readonly machine: string;
  readonly busyUntil: ScenarioInstant;
  readonly material: string | null;
}

/** A target whose names are not looked up yet. */
export type ScenarioTarget = TargetWording & {
  /** Where it stands in the file. */
  readonly path: SourcePath;
  /** Hour of the day after which a file counts for the next working day, for all jobs. */
  readonly cutOffHour: number | null;
};
