import type { Lab } from '@buildweek/model';
import { MILLISECONDS_PER_WEEK, toMilliseconds } from '../kernel/clock.ts';
import { EventCalendar, PHASE_TIMERS, PHASE_WINDOWS_BEGIN } from '../kernel/event-calendar.ts';
import { createLocalTime, type LocalTime } from '../kernel/local-time.ts';
import { createWorkingDays, type WorkingDays } from '../kernel/working-days.ts';
import { union, type WorkingWindows, windowsOf } from '../kernel/working-windows.ts';
import { FollowedJobs } from '../observe/followed-jobs.ts';
import type { History } from '../observe/history.ts';
import { Recorder } from '../observe/recorder.ts';
import { Tracer } from '../observe/tracer.ts';
import { MeasuredWindow } from '../observe/window.ts';
import { writeHistory } from '../observe/write-history.ts';
import type { SimulationSettings } from '../settings.ts';
import { Bookings } from './bookings.ts';
import { Carriers } from './carriers.ts';
import { compileLab } from './compile-lab.ts';
import type { CompiledLab } from './compiled-lab.ts';
import { Demand } from './demand.ts';
import { Dispatch } from './dispatch.ts';
import { EquipmentHours } from './equipment-hours.ts';
import * as event from './events.ts';
import { Flow } from './flow.ts';
import { enterInitialState } from './initial-state.ts';
import { JobBook } from './job-book.ts';
import { LaunchRules } from './launch.ts';
import { type LaunchTimes, launchTimesOf } from './launch-times.ts';
import { LoadPool } from './load-pool.ts';
import { Outside } from './outside.ts';
import { Presence } from './presence.ts';
import { Requests } from './requests.ts';
import { RunPhases } from './run-phases.ts';
import { Staff } from './staff.ts';
import { StageWork } from './stage-work.ts';
import { Standstill } from './standstill.ts';
import { TaskFloor } from './task-floor.ts';
import { UnitFloor } from './unit-floor.ts';
import { Upkeep } from './upkeep.ts';

/** What follows from the lab and the length of the plan, and is the same for every replication. */
interface PlanTimes {
  readonly horizon: number;
  readonly windows: readonly WorkingWindows[];
  readonly launchTimes: LaunchTimes;
  readonly workingDays: WorkingDays;
  readonly presence: Presence;
  /** For each unit group: the hours in which the equipment is there, and those in which it may run; null: always. */
  readonly equipment: readonly (WorkingWindows | null)[];
  readonly allowed: readonly (WorkingWindows | null)[];
  readonly service: ReadonlyMap<string, WorkingWindows>;
}

/**
 * A lab that can be played any number of times. The parts of the model hold a reference to this object and
 * find each other through it; it keeps the time and takes the events out in their order.
 */
export class Simulation {
  readonly compiled: CompiledLab;
  readonly calendar = new EventCalendar();
  readonly localTime: LocalTime;
  readonly staff: Staff;
  readonly tasks: TaskFloor;
  readonly units: UnitFloor;
  readonly carriers: Carriers;
  readonly runs: RunPhases;
  readonly upkeep: Upkeep;
  readonly equipmentHours: EquipmentHours;
  readonly launch: LaunchRules;
  readonly loads: LoadPool;
  readonly bookings: Bookings;
  readonly stageWork: StageWork;
  readonly flow: Flow;
  readonly jobs: JobBook;
  readonly demand: Demand;
  readonly requests: Requests;
  readonly outside: Outside;
  private readonly dispatch: Dispatch;
  private readonly standstill: Standstill;
  private readonly lab: Lab;
  private plan: PlanTimes | null = null;

  /** Elapsed milliseconds since the start of the plan. */
  now = 0;
  settings!: SimulationSettings;
  recorder!: Recorder;
  tracer: Tracer | null = null;
  /** The tracer with what it has written, also when it writes no more. */
  written: Tracer | null = null;
  followed: FollowedJobs | null = null;
  workingDays!: WorkingDays;
  presence!: Presence;
  private hasEnded = false;
  /** When the stated state holds: before it people come and go, and nothing else happens. */
  startAt = 0;
  private measuredEnd = 0;
  private traceEnd = 0;

  constructor(lab: Lab) {
    this.lab = lab;
    this.compiled = compileLab(lab);
    this.localTime = createLocalTime(lab.clockChanges);
    this.staff = new Staff(this);
    this.tasks = new TaskFloor(this);
    this.units = new UnitFloor(this);
    this.carriers = new Carriers(this);
    this.runs = new RunPhases(this);
    this.upkeep = new Upkeep(this);
    this.equipmentHours = new EquipmentHours(this);
    this.launch = new LaunchRules(this);
    this.loads = new LoadPool(this.compiled);
    this.bookings = new Bookings(this);
    this.stageWork = new StageWork(this);
    this.flow = new Flow(this);
    this.jobs = new JobBook(this);
    this.demand = new Demand(this);
    this.requests = new Requests(this);
    this.outside = new Outside(this);
    this.dispatch = new Dispatch(this);
    this.standstill = new Standstill(this);
  }

  /** Plays one replication. */
  play(settings: SimulationSettings): History {
    const window = this.begin(settings);
    const { calendar, dispatch } = this;
    // What happens at the very start comes before work starts on what stands there, as at any instant.
    if (calendar.nextTime > 0) {
      dispatch.run();
      this.standstill.settle();
    }
    while (!this.hasEnded && calendar.take()) {
      this.now = calendar.time;
      if (this.now > this.traceEnd) this.tracer = null;
      this.handle(calendar.kind, calendar.subject, calendar.stamp);
      if (calendar.nextTime === this.now) continue;
      dispatch.run();
      // What started and takes no time ends at this same instant.
      if (calendar.nextTime !== this.now) {
        this.standstill.settle();
        if (this.isDone()) this.hasEnded = true;
      }
    }
    return this.finish(window);
  }

  private isDone(): boolean {
    if (this.followed !== null) return this.followed.open === 0;
    return this.now >= this.measuredEnd && this.jobs.cohortOpen === 0;
  }

  private begin(settings: SimulationSettings): MeasuredWindow {
    // A lab that starts from a state in the middle of a week is measured from then on.
    this.startAt = this.localTime.toElapsed(toMilliseconds(this.lab.initialState.atHour ?? 0));
    const start = Math.max(this.startAt, settings.ignoredWeeks * MILLISECONDS_PER_WEEK);
    const end = start + settings.weeks * MILLISECONDS_PER_WEEK;
    const cap = end + settings.capWeeks * MILLISECONDS_PER_WEEK;
    const plan = this.planFor(cap);
    const window = new MeasuredWindow(start, end, settings.weeks);
    this.settings = settings;
    this.now = 0;
    this.hasEnded = false;
    this.measuredEnd = end;
    this.workingDays = plan.workingDays;
    this.presence = plan.presence;
    this.recorder = new Recorder(
      this.compiled,
      window,
      this.localTime,
      plan.workingDays,
      settings.queueWaits,
      this.startAt,
    );
    this.tracer = settings.trace ? new Tracer(this) : null;
    this.written = this.tracer;
    this.traceEnd = settings.traceUntil ?? Number.POSITIVE_INFINITY;
    const { followJobs = 0, awaitedJob = null, followSteps = false } = settings;
    this.followed = followJobs > 0 ? new FollowedJobs(followJobs, awaitedJob, followSteps) : null;
    this.calendar.clear();
    this.calendar.schedule(end, PHASE_TIMERS, event.EVENT_MEASURED_END, 0, 0);
    this.calendar.schedule(cap, PHASE_TIMERS, event.EVENT_CAP, 0, 0);
    this.staff.reset(plan.windows);
    this.tasks.reset();
    this.units.reset();
    this.carriers.reset();
    plan.allowed.forEach((allowed, group) => {
      this.units.groups[group].allowedWindows = allowed;
    });
    if (this.startAt === 0) this.upkeep.reset();
    else this.upkeep.quieten();
    this.equipmentHours.reset(plan.equipment);
    this.launch.reset(plan.launchTimes);
    this.loads.reset();
    this.jobs.reset();
    this.requests.reset();
    this.outside.reset();
    this.demand.reset();
    if (this.startAt === 0) enterInitialState(this, this.lab);
    else this.calendar.schedule(this.startAt, PHASE_WINDOWS_BEGIN, event.EVENT_STARTS, 0, 0);
    return window;
  }

  /** From here on there is work: what stands in the lab is there, and machines may break down. */
  private startLater(): void {
    this.upkeep.reset();
    enterInitialState(this, this.lab);
  }

  private handle(kind: number, subject: number, stamp: number): void {
    switch (kind) {
      case event.EVENT_TASK_ENDS:
        this.tasks.ends(subject, stamp);
        break;
      case event.EVENT_PHASE_ENDS:
        this.runs.unattendedPhaseEnds(subject, stamp);
        break;
      case event.EVENT_WAIT_ENDS:
        this.flow.waitEnds(subject, stamp);
        break;
      case event.EVENT_OTHER_DUTIES_END:
        this.staff.dutiesEnd(subject, stamp);
        break;
      case event.EVENT_GRACE_ENDS:
        this.staff.graceEnds(subject, stamp);
        break;
      case event.EVENT_WINDOW_ENDS:
        this.staff.windowEnds(subject);
        break;
      case event.EVENT_WINDOW_BEGINS:
        this.staff.windowBegins(subject);
        break;
      case event.EVENT_ARRIVAL:
        this.demand.arrive(subject);
        break;
      case event.EVENT_GROUP_TIMER:
        this.launch.timerRings(subject);
        break;
      case event.EVENT_OTHER_DUTIES_DUE:
        this.staff.dutiesFallDue(subject);
        break;
      case event.EVENT_OTHER_DUTIES_DAY:
        this.staff.dutiesDay(subject);
        break;
      case event.EVENT_BREAKS_DOWN:
        this.upkeep.breaksDown(subject, stamp);
        break;
      case event.EVENT_BREAKDOWN_NOTICED:
        this.upkeep.noticed(subject, stamp);
        break;
      case event.EVENT_REPAIRED:
        this.upkeep.repaired(subject, stamp);
        break;
      case event.EVENT_CHORE_DUE:
        this.upkeep.choreDue(subject, stamp);
        break;
      case event.EVENT_CHORE_ENDS:
        this.upkeep.choreEnds(subject, stamp);
        break;
      case event.EVENT_END_NOTICED:
        this.runs.endNoticed(subject, stamp);
        break;
      case event.EVENT_MAY_RUN:
        this.runs.mayRun(subject, stamp);
        break;
      case event.EVENT_EQUIPMENT_COMES:
        this.units.equipmentComes(subject, true);
        break;
      case event.EVENT_EQUIPMENT_GOES:
        this.units.equipmentComes(subject, false);
        break;
      case event.EVENT_CANCELLED:
        this.requests.cancelled(subject, stamp);
        break;
      case event.EVENT_REVISED:
        this.requests.revised(subject, stamp);
        break;
      case event.EVENT_COMES_BACK:
        this.outside.comesBack(subject, stamp);
        break;
      case event.EVENT_STARTS:
        this.startLater();
        break;
      case event.EVENT_CAP:
        this.hasEnded = true;
        break;
      case event.EVENT_MEASURED_END:
        // Nothing happens: the loop looks whether the cohort is finished.
        break;
    }
  }

  /** Hours of a service; null: day and night. */
  serviceWindows(calendar: string | null): WorkingWindows | null {
    return calendar === null ? null : ((this.plan as PlanTimes).service.get(calendar) ?? null);
  }

  private finish(window: MeasuredWindow): History {
    this.staff.finish();
    this.tasks.finish();
    this.units.finish();
    this.jobs.finish();
    return writeHistory(this, window);
  }

  private planFor(horizon: number): PlanTimes {
    if (this.plan !== null && this.plan.horizon === horizon) return this.plan;
    const { lab, compiled, localTime } = this;
    const calendarWindows = (name: string): WorkingWindows => {
      const calendar = lab.calendars.find((candidate) => candidate.name === name);
      if (calendar === undefined) throw new Error(`There is no calendar "${name}" in the lab.`);
      return windowsOf(calendar, localTime, horizon);
    };
    const windows = lab.people.map((group) => calendarWindows(group.calendar));
    const labCalendar = lab.calendars.find((candidate) => candidate.name === lab.labCalendar);
    if (labCalendar === undefined) throw new Error(`There is no calendar "${lab.labCalendar}" in the lab.`);
    const presence = new Presence(windows.filter((_, group) => lab.people[group].count > 0));
    const conditions = compiled.unitGroups.map((group) => group.conditions);
    const serviceCalendars = conditions.flatMap(({ breakdowns }) =>
      breakdowns.flatMap(({ serviceCalendar }) => (serviceCalendar === null ? [] : [serviceCalendar])),
    );
    const always: WorkingWindows | null = null;
    this.plan = {
      horizon,
      presence,
      equipment: conditions.map(({ calendar }) => (calendar === null ? always : calendarWindows(calendar))),
      allowed: conditions.map(({ unattendedHours }) =>
        unattendedHours === null
          ? always
          : union([
              presence.windows,
              windowsOf({ name: '', weekly: unattendedHours, closedDays: [], extra: [] }, localTime, horizon),
            ]),
      ),
      service: new Map(serviceCalendars.map((name) => [name, calendarWindows(name)])),
      windows,
      launchTimes: launchTimesOf(compiled, windows, calendarWindows(lab.labCalendar), localTime, horizon),
      workingDays: createWorkingDays(labCalendar, localTime, horizon),
    };
    return this.plan;
  }
}
