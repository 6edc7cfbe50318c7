import type { Stream } from '../kernel/streams.ts';
import type { CompiledUnit, CompiledUnitClass } from './compiled-lab.ts';
import type { Load } from './load.ts';
import type { Task } from './task.ts';
import type { UpkeepItem } from './upkeep-item.ts';

/** A machine or a station: an individual with a name, a state and streams of its own. */
export class Unit {
  readonly index: number;
  readonly group: number;
  readonly name: string;
  /** Position in MACHINE_STATES or STATION_STATES, and since when. */
  state = 0;
  stateSince = 0;
  readonly timeInState: Float64Array;
  /** Material that is loaded; -1 for none. */
  material = -1;
  /** What it holds, chained by `nextInUnit`; null when it is free. */
  loads: Load | null = null;
  unitClass: CompiledUnitClass | null = null;
  phase = -1;
  phaseStartedAt = 0;
  /** Milliseconds of each phase, drawn when the content is fixed. */
  readonly durations: Float64Array;
  /** Milliseconds that each attended phase typically takes with this content. */
  readonly typicals: Float64Array;
  /** Uniform numbers of the next run, one for each draw slot, drawn ahead: the n-th run takes the n-th. */
  readonly uniforms: Float64Array;
  /** One for each draw slot; null where nothing is random. */
  readonly streams: (Stream | null)[];
  stamp = 0;
  /** Whether it is counted among the idle units of its group. */
  isCounted = true;
  isDown = false;
  downSince = 0;
  /** Whether the equipment is with somebody else. */
  isAway = false;
  chore: UpkeepItem | null = null;
  /** Attended work on it, waiting or going on. */
  task: Task | null = null;
  /** What it stands still for between two phases: see `run-phases`. */
  pending = 0;
  /** When the unattended part of the present run was over; -1 while it is not. */
  endedAt = -1;
  /** Whether a breakdown has spoilt the build that it holds. */
  isLost = false;
  /** Whether the present build fails, or one job of it; drawn at the launch. */
  willFail = false;
  spoilsOneJob = false;
  spoiltShare = 0;
  cleaningDuration = 0;
  /** Carrier pool whose carrier it holds after a lost build; -1 for none. */
  heldCarrier = -1;
  failures = 0;
  breakdowns = 0;
  /** Milliseconds in which it ran with nobody in the lab. */
  ranAlone = 0;
  runs = 0;
  pieces = 0;
  fillSum = 0;
  fill = 0;
  /** Height of the build that it holds, mm, and volume of the parts in it, mm3; 0 where no shapes are known. */
  height = 0;
  partVolume = 0;
  heightSum = 0;
  partVolumeSum = 0;

  constructor(compiled: CompiledUnit, states: number, phases: number, slots: number) {
    this.index = compiled.index;
    this.group = compiled.group;
    this.name = compiled.name;
    this.timeInState = new Float64Array(states);
    this.durations = new Float64Array(phases);
    this.typicals = new Float64Array(phases);
    this.uniforms = new Float64Array(slots);
    this.streams = new Array<Stream | null>(slots).fill(null);
  }

  reset(material: number): void {
    this.state = 0;
    this.stateSince = 0;
    this.timeInState.fill(0);
    this.material = material;
    this.loads = null;
    this.unitClass = null;
    this.phase = -1;
    this.stamp++;
    this.isCounted = true;
    this.isDown = false;
    this.isAway = false;
    this.chore = null;
    this.task = null;
    this.pending = 0;
    this.endedAt = -1;
    this.isLost = false;
    this.willFail = false;
    this.spoilsOneJob = false;
    this.heldCarrier = -1;
    this.failures = 0;
    this.breakdowns = 0;
    this.ranAlone = 0;
    this.runs = 0;
    this.pieces = 0;
    this.fillSum = 0;
    this.fill = 0;
    this.height = 0;
    this.partVolume = 0;
    this.heightSum = 0;
    this.partVolumeSum = 0;
  }
}
