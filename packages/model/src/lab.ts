import type { ClockChange, WorkingCalendar } from './calendar.ts';
import type { DemandStream, PartType, WorkingDayRule } from './demand.ts';
import type { InitialState } from './initial-state.ts';
import type { CarrierPool, MachineGroup, PeopleGroup, StationGroup } from './resources.ts';

/**
 * A print lab: everything that one replication needs to know, as plain data that can be cloned to a worker
 * and hashed. Times are hours; clock times are local hours since the start of the plan, a Monday 00:00.
 * References between its lists are by name, and `scenario` has checked that they resolve.
 */
export interface Lab {
  readonly name: string;
  /** The Monday on which the plan starts, `YYYY-MM-DD`; for labels only. */
  readonly startDate: string;
  /** Ascending; empty for a zone without clock changes. */
  readonly clockChanges: readonly ClockChange[];
  readonly calendars: readonly WorkingCalendar[];
  /** Name of the calendar whose days are working days and whose last window closes the day. */
  readonly labCalendar: string;
  readonly people: readonly PeopleGroup[];
  readonly machines: readonly MachineGroup[];
  readonly stations: readonly StationGroup[];
  readonly carriers: readonly CarrierPool[];
  readonly parts: readonly PartType[];
  readonly demand: readonly DemandStream[];
  readonly dispatch: DispatchRules;
  readonly initialState: InitialState;
  /** Deadlines beside the promises, for all jobs alike: a history counts how many jobs ended by each. Each is there once. */
  readonly deadlines: readonly WorkingDayRule[];
}

/** Kinds of attended work in the order in which they are served, after rush. */
export type WorkKind = 'machine' | 'station' | 'bench';

export interface DispatchRules {
  /** Each kind once, the first is served first. */
  readonly order: readonly WorkKind[];
  /** Whether work that may not pause is fitted by its typical duration (the default) or by the drawn one. */
  readonly fitOn: 'typical' | 'drawn';
  /** Within a kind, after rush: the earliest promise first (the default), or the least work at this stage. */
  readonly within: 'promise' | 'shortest work';
  /** Whether a rush job may interrupt work that may pause. */
  readonly rushInterrupts: boolean;
}
