import type {
  DemandStream,
  HourSpan,
  LaunchRule,
  MaterialChange,
  Noticing,
  PartShape,
  PeopleGroup,
  Phase,
  SendOutRule,
  ShapedBuilds,
  StationGroup,
  Step,
  WorkingDayRule,
  WorkKind,
} from '@buildweek/model';
import type { CountSampler } from '../kernel/count-sampler.ts';
import type { Sampler } from '../kernel/sampler.ts';

/**
 * The lab with names resolved to positions, durations to samplers and hours to milliseconds: what does not
 * change from one replication to the next.
 */
export interface CompiledLab {
  /** One for each pair of skill and number of persons that some work asks for. */
  readonly attendedQueues: readonly CompiledAttendedQueue[];
  /** Names on which the hours of people are booked: stages, and phases of build and station stages. */
  readonly workLabels: readonly string[];
  readonly peopleGroups: readonly PeopleGroup[];
  readonly persons: readonly CompiledPerson[];
  readonly carriers: readonly CompiledCarrier[];
  readonly materials: readonly string[];
  /** Machine groups in the order of the lab, then station groups. */
  readonly unitGroups: readonly CompiledUnitGroup[];
  readonly units: readonly CompiledUnit[];
  readonly unitClasses: readonly CompiledUnitClass[];
  readonly parts: readonly CompiledPart[];
  readonly streams: readonly CompiledStream[];
  /** Most phases of any unit class; sizes the tables of a unit. */
  readonly mostPhases: number;
  /** Most stages and steps of any part; sizes the tables of a job. */
  readonly mostStages: number;
  readonly mostSteps: number;
  readonly mostTailStages: number;
  readonly mostPersons: number;
  readonly fitOnDrawn: boolean;
  /** As in `Lab.deadlines`. */
  readonly deadlines: readonly WorkingDayRule[];
  readonly shortestFirst: boolean;
  readonly rushInterrupts: boolean;
  /** Rank of each kind of work: 0 is served first. */
  readonly kindRanks: Readonly<Record<WorkKind, number>>;
}

export interface CompiledAttendedQueue {
  readonly index: number;
  readonly skill: string;
  readonly persons: number;
  /** Positions in `persons` of everybody with the skill: fewest skills first, then lowest number. */
  readonly candidates: Int32Array;
}

export interface CompiledPerson {
  readonly index: number;
  readonly group: number;
  readonly numberInGroup: number;
  readonly name: string;
  /** Positions in `attendedQueues` of what the person could do. */
  readonly queues: Int32Array;
}

export interface CompiledCarrier {
  readonly count: number;
  /** Positions in `unitGroups` of those that use it. */
  readonly groups: Int32Array;
}

/** Attended work, ready to be drawn and staffed. */
export interface CompiledWork {
  readonly queue: number;
  readonly persons: number;
  readonly sampler: Sampler;
  readonly constant: boolean;
  readonly typical: number;
  readonly pausable: boolean;
  readonly label: number;
}

/** Uniform numbers that a unit draws for each of its runs; those of tail stages follow. */
export const DRAW_SLOTS = [
  'prepare',
  'set-up',
  'change',
  'warm-up',
  'first layers',
  'print',
  'print per part',
  'cool-down',
  'unload',
  'load',
  'run',
  'failure',
  'failure point',
  'failure by hour',
  'cleaning',
] as const;
export type DrawSlot = (typeof DRAW_SLOTS)[number];

export interface CompiledUnitGroup {
  readonly index: number;
  readonly kind: 'machine' | 'station';
  readonly kindRank: number;
  readonly name: string;
  /** Position of the first unit in `units`, and how many there are. */
  readonly firstUnit: number;
  readonly count: number;
  readonly capacity: number;
  readonly capacityUnit: 'space' | StationGroup['unit'];
  /** Most jobs of a build; Infinity without a limit. */
  readonly mostJobs: number;
  readonly launch: LaunchRule;
  readonly carrier: number;
  readonly initialMaterial: number;
  readonly materialChanges: readonly CompiledMaterialChange[];
  /** Positions in `unitClasses`. */
  readonly classes: readonly number[];
  /** Positions in `attendedQueues` of what is needed to start a run of any class. */
  readonly startQueues: readonly number[];
  /** Positions of the draw slots (tail slots included) in which something is random. */
  readonly randomSlots: readonly number[];
  readonly conditions: CompiledConditions;
  readonly failure: CompiledFailure | null;
  /** Cool-down outside the machine; null: in the machine or none. */
  readonly outsideCoolDown: Sampler | null;
}

/** What holds for the equipment of a group beside its work. */
export interface CompiledConditions {
  readonly breakdowns: readonly CompiledBreakdown[];
  readonly chores: readonly CompiledChore[];
  readonly noticing: Noticing;
  readonly calendar: string | null;
  readonly unattendedHours: readonly HourSpan[] | null;
}

export interface CompiledBreakdown {
  readonly name: string;
  readonly byRunningHours: boolean;
  readonly between: Sampler;
  readonly losesBuild: boolean;
  /** Own repair; null when a service comes. */
  readonly ownRepair: CompiledWork | null;
  readonly response: Sampler | null;
  readonly visit: Sampler | null;
  readonly serviceCalendar: string | null;
}

export interface CompiledChore {
  readonly name: string;
  readonly kind: 'maintenance' | 'test print';
  readonly byRunningHours: boolean;
  readonly every: Sampler;
  readonly work: CompiledWork | null;
  readonly duration: Sampler | null;
}

export interface CompiledFailure {
  readonly chancePerBuild: number;
  readonly perPrintHour: number;
  readonly losesBuild: boolean;
  readonly cleaning: CompiledWork | null;
}

export interface CompiledMaterialChange {
  readonly from: number;
  readonly to: number;
  readonly sampler: Sampler;
  readonly typical: number;
  readonly attended: MaterialChange['attended'];
}

export interface CompiledUnit {
  readonly index: number;
  readonly group: number;
  readonly name: string;
}

/** What may run together in a unit, and the phases it goes through. */
export interface CompiledUnitClass {
  readonly index: number;
  readonly group: number;
  readonly material: number;
  readonly phases: readonly CompiledPhase[];
  /** Position in `phases` of the phase whose duration is the print or the run. */
  readonly runPhase: number;
  /** How the run of a station is drawn; `print` for machines. */
  readonly runBasis: 'print' | 'batch' | 'job' | 'part' | 'build';
  /** The run of a batch; null when it is drawn with the jobs or is a print. */
  readonly batchSampler: Sampler | null;
  /** Typical milliseconds of a station's run, for one of what its basis counts; 0 for machines. */
  readonly typicalRun: number;
  /** Step of the cool-down, counted from the first step of the stage; also of one outside the machine. */
  readonly coolDownStep: number;
  /** How builds are packed and timed from shapes; null where parts state their space and time, and for stations. */
  readonly shapes: CompiledShapes | null;
  /** Durations drawn with each build for the following stages of level `build`, by stage offset from 1. */
  readonly tailWork: readonly (CompiledTailWork | null)[];
  /** For a build that has been decided on beforehand; null for all that the rules of the lab decide. */
  readonly pinned: CompiledPin | null;
}

/** A class for one build, apart from the class to which its jobs belong otherwise. */
interface CompiledPin {
  /** Index of the class whose loads it takes. */
  readonly ofClass: number;
  readonly machine: string;
  /** Numbers of its jobs. */
  readonly jobs: ReadonlySet<number>;
  /** Local milliseconds since the start of the plan. */
  readonly from: number;
}

/** Shapes that may share a build. */
export interface CompiledShapes {
  readonly builds: ShapedBuilds;
  readonly shapes: readonly PartShape[];
  /** Position in `shapes` for each part type of the lab; -1 for part types of other classes. */
  readonly shapeOfPart: Int32Array;
}

export interface CompiledTailWork {
  readonly sampler: Sampler;
  readonly constant: boolean;
}

export interface CompiledPhase {
  readonly phase: Phase;
  readonly slot: number;
  readonly what: 'attended' | 'change' | 'timed' | 'run';
  /** Null when nobody is needed. */
  readonly work: CompiledWork | null;
  /** For phases without attendance whose duration does not depend on the content. */
  readonly sampler: Sampler | null;
  readonly constant: boolean;
  /** State of the unit while the phase goes on, and while it waits for somebody to begin it. */
  readonly state: number;
  readonly waitState: number;
  /** Position of its step, counted from the first step of the stage. */
  readonly stepOffset: number;
  /** Whether running hours pass in it. */
  readonly isRunning: boolean;
  /** Typical milliseconds of a phase that goes by itself and does not depend on the content. */
  readonly typical: number;
}

export interface CompiledPart {
  readonly index: number;
  readonly name: string;
  readonly space: number;
  /** Volume of the bounding box, mm3; 0 when no shape is known. */
  readonly boxVolume: number;
  /** Typed print times; null when there is no build, and where shapes decide. */
  readonly print: CompiledPrint | null;
  readonly stages: readonly CompiledStage[];
  readonly steps: readonly Step[];
  /** Position in `steps` of the one for jobs that are made outside. */
  readonly outsideStep: number;
}

interface CompiledPrint {
  readonly perBuild: Sampler;
  readonly perPart: Sampler;
  readonly typicalPerBuild: number;
  readonly typicalPerPart: number;
}

export interface CompiledStage {
  readonly kind: 'work' | 'unit' | 'wait';
  readonly name: string;
  readonly firstStep: number;
  readonly stepCount: number;
  readonly atBuildLevel: boolean;
  /** Longest wait before the stage that is not counted as too long, milliseconds; Infinity without a limit. */
  readonly maximumWait: number;
  /** Chance per piece to go round again, and from which stage; a share of 0 for none. */
  readonly rejectShare: number;
  readonly rejectStage: number;
  /** Chance that a wait is for the requester at all; 1 for a plain wait. */
  readonly isForRequester: boolean;
  readonly requesterChance: number;
  /** Whether pieces wait for their whole job behind this stage. */
  readonly gathersJob: boolean;
  readonly emptiesCarrier: boolean;
  /** For kind `work`. */
  readonly work: CompiledWork | null;
  /** For kind `unit`: position in `unitClasses`. */
  readonly unitClass: number;
  /** What is drawn for a job at its arrival: nothing, one value, or one for each piece. */
  readonly basis: 'none' | 'job' | 'part';
  readonly sampler: Sampler | null;
  readonly constant: boolean;
  /** Typical milliseconds of the stage for a job of one piece, for the risk to a promise. */
  readonly typical: number;
  /** Typical milliseconds for each further piece. */
  readonly typicalPerPiece: number;
}

export interface CompiledStream {
  readonly index: number;
  readonly stream: DemandStream;
  readonly part: CompiledPart;
  readonly quantity: CountSampler;
  readonly quantityConstant: boolean;
  readonly cancels: CompiledChange | null;
  readonly revises: CompiledChange | null;
  readonly sentOut: CompiledSendOut | null;
}

/** When jobs are made outside, and for how long. */
export interface CompiledSendOut {
  readonly rule: SendOutRule;
  /** Position in `unitGroups` of the machines of the first build of the route; -1 without a build. */
  readonly group: number;
  /** Lead time by the clock; null where working days are counted. */
  readonly hours: Sampler | null;
  /** In working days, to be rounded. */
  readonly days: Sampler | null;
  readonly cutOffHour: number | null;
}

/** A requester's change of mind. */
export interface CompiledChange {
  readonly chance: number;
  readonly after: Sampler;
  readonly onlyBeforeStart: boolean;
}
