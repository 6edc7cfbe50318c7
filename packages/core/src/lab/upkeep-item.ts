import type { Stream } from '../kernel/streams.ts';
import type { CompiledBreakdown, CompiledChore } from './compiled-lab.ts';
import type { Unit } from './unit.ts';

/** One breakdown or chore of one machine or station: how far off the next one is. */
export class UpkeepItem {
  readonly id: number;
  readonly unit: Unit;
  readonly breakdown: CompiledBreakdown | null;
  readonly chore: CompiledChore | null;
  /** Running milliseconds until it comes, as of the start of the present phase; Infinity when it goes by the clock. */
  runningLeft = Number.POSITIVE_INFINITY;
  /** A chore that has fallen due and is not done; since when. */
  dueSince = -1;
  /** A failure that fell into another one's repair: its time starts again when that is over. */
  isMissed = false;
  /** Changes whenever a scheduled event of the item is void. */
  stamp = 0;
  readonly gapStream: StreamSlot = { stream: null };
  readonly workStream: StreamSlot = { stream: null };
  readonly visitStream: StreamSlot = { stream: null };

  constructor(id: number, unit: Unit, breakdown: CompiledBreakdown | null, chore: CompiledChore | null) {
    this.id = id;
    this.unit = unit;
    this.breakdown = breakdown;
    this.chore = chore;
  }

  get name(): string {
    return this.breakdown?.name ?? this.chore?.name ?? '';
  }

  get byRunningHours(): boolean {
    return this.breakdown?.byRunningHours ?? this.chore?.byRunningHours ?? false;
  }
}

/** A stream that is opened anew for each replication. */
interface StreamSlot {
  stream: Stream | null;
}
