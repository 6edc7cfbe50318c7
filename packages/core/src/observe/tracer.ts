import { SENT_OUT } from '@buildweek/model';
import { MACHINE_STATES, PERSON_STATES, STATION_STATES, WAIT_CAUSES } from '@buildweek/results';
import type { Job } from '../lab/job.ts';
import type { Load, Lot } from '../lab/load.ts';
import type { Person } from '../lab/person.ts';
import type { Simulation } from '../lab/simulation.ts';
import type { Task } from '../lab/task.ts';
import type { Unit } from '../lab/unit.ts';
import type { StateSpan, TraceEntry, TraceEvent } from './history.ts';

/** Writes down every step of every job, when asked to; it reads the model and changes nothing. */
export class Tracer {
  readonly entries: TraceEntry[] = [];
  readonly states: StateSpan[] = [];
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  arrives(job: Job): void {
    this.entries.push({
      time: this.simulation.now,
      what: 'job arrives',
      job: job.number,
      part: job.part.name,
      stage: null,
      phase: null,
      unit: null,
      persons: [],
      pieces: job.quantity,
      cause: null,
      duration: this.simulation.now - job.arrivedAt,
      dueAt: job.dueAt < Number.POSITIVE_INFINITY ? job.dueAt : null,
      rush: job.rush,
    });
  }

  job(what: 'job ends' | 'job is cancelled' | 'job is revised', job: Job): void {
    this.add(what, job, null, null, null, [], job.quantity);
  }

  /** A job begins to be made outside, or is back. */
  outside(what: 'step starts' | 'step ends', job: Job): void {
    this.add(what, job, SENT_OUT, 'outside', null, [], job.quantity);
  }

  person(what: 'on duty' | 'off duty' | 'other duties start' | 'other duties end', person: Person): void {
    this.add(what, null, null, null, null, [person.name], 0);
  }

  /** One entry for each job in the loads of the task. */
  task(what: TraceEvent, task: Task): void {
    const { staff } = this.simulation;
    const persons = Array.from(
      task.staff.subarray(0, task.work.persons),
      (index) => staff.persons[index].name,
    );
    const phase = task.unit === null ? 'work' : (task.unit.unitClass?.phases[task.unit.phase]?.phase ?? null);
    if (task.load === null && task.unit !== null) {
      this.add(what, null, null, task.upkeep?.name ?? 'cleaning', task.unit.name, persons, 0);
    }
    for (let load: Load | null = task.load; load !== null; load = load.nextInUnit) {
      this.lots(what, load, phase, task.unit?.name ?? null, persons);
    }
  }

  equipment(
    what: 'breaks down' | 'is repaired' | 'chore starts' | 'chore ends',
    unit: Unit,
    name: string,
  ): void {
    this.add(what, null, null, name, unit.name, [], 0);
  }

  rejects(lot: Lot, stage: number, pieces: number): void {
    this.add('parts are rejected', lot.job, lot.part.stages[stage].name, null, null, [], pieces);
  }

  /** A lot has waited for a step; the causes come one after the other, though they may have alternated. */
  waited(lot: Lot, step: number, cause: number, duration: number): void {
    const { job, part } = lot;
    this.entries.push({
      time: this.simulation.now,
      what: 'has waited',
      job: job.number,
      part: part.name,
      stage: part.steps[step].stage,
      phase: part.steps[step].phase,
      unit: null,
      persons: [],
      pieces: lot.pieces,
      cause: WAIT_CAUSES[cause],
      duration,
      dueAt: null,
      rush: false,
    });
  }

  /** A machine or station leaves its state; what takes no time is not written down. */
  unitState({ group, state, stateSince, name }: Unit): void {
    const isMachine = this.simulation.compiled.unitGroups[group].kind === 'machine';
    this.state((isMachine ? MACHINE_STATES : STATION_STATES)[state], stateSince, name, null);
  }

  /** A person leaves its state; what takes no time is not written down. */
  personState({ state, stateSince, name }: Person): void {
    this.state(PERSON_STATES[state], stateSince, null, name);
  }

  unit(what: TraceEvent, unit: Unit, phase: string): void {
    for (let load = unit.loads; load !== null; load = load.nextInUnit) {
      this.lots(what, load, phase, unit.name, []);
    }
  }

  load(what: TraceEvent, load: Load, phase: string): void {
    this.lots(what, load, phase, null, []);
  }

  private state(state: string, from: number, unit: string | null, person: string | null): void {
    const to = this.simulation.now;
    if (to > from) this.states.push({ from, to, state, unit, person });
  }

  private lots(
    what: TraceEvent,
    load: Load,
    phase: string | null,
    unit: string | null,
    persons: readonly string[],
  ): void {
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      if (!lot.isDead) this.add(what, lot.job, lot.definition.name, phase, unit, persons, lot.pieces);
    }
  }

  private add(
    what: TraceEvent,
    job: Job | null,
    stage: string | null,
    phase: string | null,
    unit: string | null,
    persons: readonly string[],
    pieces: number,
  ): void {
    this.entries.push({
      time: this.simulation.now,
      what,
      job: job?.number ?? -1,
      part: job?.part.name ?? null,
      stage,
      phase,
      unit,
      persons,
      pieces,
      cause: null,
      duration: 0,
      dueAt: null,
      rush: false,
    });
  }
}
