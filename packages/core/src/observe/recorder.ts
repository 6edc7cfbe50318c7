import { MACHINE_STATES, PERSON_STATES, WAIT_CAUSES } from '@buildweek/results';
import { MILLISECONDS_PER_WEEK } from '../kernel/clock.ts';
import type { LocalTime } from '../kernel/local-time.ts';
import type { WorkingDays } from '../kernel/working-days.ts';
import type { CompiledLab } from '../lab/compiled-lab.ts';
import type { Job } from '../lab/job.ts';
import type { Load } from '../lab/load.ts';
import type { Person } from '../lab/person.ts';
import { PERSON_IDLE, PERSON_OFF } from '../lab/person.ts';
import type { Presence } from '../lab/presence.ts';
import type { Unit } from '../lab/unit.ts';
import type {
  JobClassHistory,
  PartHoursHistory,
  PeopleHistory,
  QueueHistory,
  WeekHistory,
} from './history.ts';
import { QueueRecorder } from './queue-recorder.ts';
import { JobClassSums, PartHoursSums, PeopleSums } from './sums.ts';
import type { MeasuredWindow } from './window.ts';

/** Positions of the states in which a machine runs: what must not happen alone everywhere. */
const RUNNING: readonly number[] = (['warm-up', 'print', 'cool-down'] as const).map((state) =>
  MACHINE_STATES.indexOf(state),
);

/** Everything that is written down of a replication, as running sums; it reads the model and changes nothing. */
export class Recorder {
  private readonly compiled: CompiledLab;
  private readonly window: MeasuredWindow;
  private readonly workingDays: WorkingDays;
  private readonly jobClasses: JobClassSums[];
  private readonly partHours: PartHoursSums[];
  private readonly people: PeopleSums[];
  private readonly unitQueues: QueueRecorder[];
  private readonly attendedQueues: QueueRecorder[];
  private readonly allJobs: QueueRecorder;
  private readonly arrivedJobs: Float64Array;
  private readonly promisedJobs: Float64Array;
  private readonly onTimeJobs: Float64Array;
  private readonly finishedJobs: Float64Array;
  private readonly finishedParts: Float64Array;
  /** For each person the latest stretch of being busy, which may go on; it is booked by hours when it is over. */
  private readonly busySince: Float64Array;
  private readonly busyUntil: Float64Array;
  /** When the plan begins: what jobs did before it is not booked. */
  private readonly startAt: number;
  private jobsChangedAt = 0;
  /** Integral of the number of jobs in the lab over the window, from the running count. */
  jobArea = 0;
  /** The same from the jobs' own stays. */
  jobStaySum = 0;
  /** Largest difference between work plus waits and lead time of a job, milliseconds. */
  leadTimeImbalance = 0;

  constructor(
    compiled: CompiledLab,
    window: MeasuredWindow,
    localTime: LocalTime,
    workingDays: WorkingDays,
    keepWaits: boolean,
    startAt: number,
  ) {
    this.compiled = compiled;
    this.startAt = startAt;
    this.window = window;
    this.workingDays = workingDays;
    const queue = (name: string, kind: QueueHistory['kind']): QueueRecorder =>
      new QueueRecorder(name, kind, window, localTime, keepWaits);
    this.jobClasses = compiled.parts.flatMap((part) => [
      new JobClassSums(part.name, false, compiled.deadlines.length),
      new JobClassSums(part.name, true, compiled.deadlines.length),
    ]);
    this.partHours = compiled.parts.map((part) => new PartHoursSums(part.stages.length, part.steps.length));
    this.people = compiled.peopleGroups.map(
      () => new PeopleSums(compiled.workLabels.length, window, localTime),
    );
    this.unitQueues = compiled.unitGroups.map((group) => queue(group.name, group.kind));
    this.attendedQueues = compiled.attendedQueues.map(({ skill, persons }) =>
      queue(persons === 1 ? skill : `${skill} (${persons} persons)`, 'people'),
    );
    this.allJobs = queue('jobs in the lab', 'all');
    this.busySince = new Float64Array(compiled.persons.length);
    this.busyUntil = new Float64Array(compiled.persons.length);
    this.arrivedJobs = new Float64Array(window.weeks);
    this.promisedJobs = new Float64Array(window.weeks);
    this.onTimeJobs = new Float64Array(window.weeks);
    this.finishedJobs = new Float64Array(window.weeks);
    this.finishedParts = new Float64Array(window.weeks);
  }

  isMeasured(time: number): boolean {
    return this.window.contains(time);
  }

  jobArrives(job: Job): void {
    if (!job.inCohort) return;
    this.jobClasses[job.part.index * 2 + (job.rush ? 1 : 0)].arrives(job);
    const week = this.weekOf(job.arrivedAt);
    this.arrivedJobs[week]++;
    if (job.dueAt < Number.POSITIVE_INFINITY) this.promisedJobs[week]++;
  }

  /** A job of those that have arrived is made outside. */
  jobIsSentOut(job: Job): void {
    if (job.inCohort) this.jobClasses[job.part.index * 2 + (job.rush ? 1 : 0)].isSentOut();
  }

  jobEnds(job: Job, now: number): void {
    this.jobStays(job, now);
    if (this.window.contains(now)) {
      const week = this.weekOf(now);
      this.finishedJobs[week]++;
      this.finishedParts[week] += job.quantity;
      this.partHours[job.part.index].countMade(job);
    }
    const imbalance = Math.abs(this.bookedTime(job) / job.quantity - this.bookableTime(job, now));
    if (imbalance > this.leadTimeImbalance) this.leadTimeImbalance = imbalance;
    if (!job.inCohort) return;
    const sums = this.jobClasses[job.part.index * 2 + (job.rush ? 1 : 0)];
    sums.ends(job, now);
    if (job.dueAt < Number.POSITIVE_INFINITY && now <= job.dueAt)
      this.onTimeJobs[this.weekOf(job.arrivedAt)]++;
    this.compiled.deadlines.forEach((deadline, index) => {
      if (now <= this.workingDays.dueAfter(job.arrivedAt, deadline)) sums.endsBy(index);
    });
    this.partHours[job.part.index].add(job);
  }

  /** A job is withdrawn by its requester. */
  jobIsWithdrawn(job: Job, now: number): void {
    this.jobStays(job, now);
    if (!job.inCohort) return;
    this.jobClasses[job.part.index * 2 + (job.rush ? 1 : 0)].isWithdrawn(job);
    if (job.dueAt < Number.POSITIVE_INFINITY) this.promisedJobs[this.weekOf(job.arrivedAt)]--;
  }

  /** Piece milliseconds of work and waiting that are in the books of a job. */
  bookedTime(job: Job): number {
    const steps = job.part.steps.length;
    return sum(job.work, steps) + sum(job.waits, steps * WAIT_CAUSES.length);
  }

  /** Milliseconds that should be in the books: what a job waited before the plan began is not. */
  bookableTime(job: Job, now: number): number {
    return now - Math.max(this.startAt, job.arrivedAt);
  }

  /** Pieces of a job have to be made again. @param stage from which on */
  repeats(job: Job, pieces: number, stage: number, now: number): void {
    if (!this.window.contains(now)) return;
    const sums = this.partHours[job.part.index];
    sums.repeatedPieces += pieces;
    const isBuiltAgain = job.part.steps.some((step) => step.phase === 'print' && step.stageIndex >= stage);
    if (isBuiltAgain) sums.rebuiltPieces += pieces;
  }

  waitsTooLong(job: Job, stage: number, now: number): void {
    if (this.window.contains(now)) this.partHours[job.part.index].waitsTooLong[stage]++;
  }

  /** @param build what was in it; still whole */
  buildFails(unit: Unit, build: Load, now: number): void {
    if (!this.window.contains(now)) return;
    unit.failures++;
    this.countBuilt(build);
  }

  private countBuilt(build: Load): void {
    for (let lot = build.lots; lot !== null; lot = lot.nextInLoad) {
      this.partHours[lot.part.index].builtPieces += lot.pieces;
    }
  }

  breakdown(unit: Unit, now: number): void {
    if (this.window.contains(now)) unit.breakdowns++;
  }

  /** Books how long a job has been in the lab. */
  jobStays(job: Job, now: number): void {
    const from = Math.max(this.startAt, job.arrivedAt);
    this.jobStaySum += this.window.overlap(from, now);
    this.allJobs.leaves(1, from, now);
  }

  /** @param inLab jobs in the lab until now */
  jobsInLabChange(inLab: number, now: number): void {
    this.jobArea += inLab * this.window.overlap(this.jobsChangedAt, now);
    this.jobsChangedAt = now;
  }

  leavesUnitQueue(group: number, weight: number, from: number, now: number): void {
    this.unitQueues[group].leaves(weight, from, now);
  }

  leavesAttendedQueue(queue: number, weight: number, from: number, now: number): void {
    this.attendedQueues[queue].leaves(weight, from, now);
  }

  unitState(unit: Unit, now: number, presence: Presence): void {
    const duration = this.window.overlap(unit.stateSince, now);
    if (duration === 0) return;
    unit.timeInState[unit.state] += duration;
    if (!RUNNING.includes(unit.state) || this.compiled.unitGroups[unit.group].kind !== 'machine') return;
    const from = Math.max(unit.stateSince, this.window.start);
    unit.ranAlone += duration - presence.attendedWithin(from, from + duration);
  }

  runEnds(unit: Unit, now: number): void {
    if (!this.window.contains(now)) return;
    unit.runs++;
    unit.fillSum += unit.fill;
    unit.heightSum += unit.height;
    unit.partVolumeSum += unit.partVolume;
    const isBuild = this.compiled.unitGroups[unit.group].kind === 'machine';
    for (let load = unit.loads; load !== null; load = load.nextInUnit) {
      unit.pieces += load.pieces;
      if (isBuild) this.countBuilt(load);
    }
  }

  personState(person: Person, now: number): void {
    const duration = this.window.overlap(person.stateSince, now);
    if (duration === 0) return;
    person.timeInState[person.state] += duration;
    if (person.state === PERSON_OFF || person.state === PERSON_IDLE) return;
    const { index, stateSince } = person;
    // One piece of work mostly follows upon the other: what touches is booked as one.
    if (stateSince !== this.busyUntil[index]) {
      this.bookBusy(person);
      this.busySince[index] = stateSince;
    }
    this.busyUntil[index] = now;
  }

  private bookBusy({ index, group }: Person): void {
    this.people[group].busyHours.add(this.busySince[index], this.busyUntil[index], 1);
  }

  personWork(group: number, label: number, from: number, now: number): void {
    this.people[group].timeByLabel[label] += this.window.overlap(from, now);
  }

  onDuty(group: number, from: number, to: number): void {
    this.people[group].dutyHours.add(from, to, 1);
  }

  jobClassHistories(): JobClassHistory[] {
    return this.jobClasses.map((sums) => sums.history());
  }

  queueHistories(): QueueHistory[] {
    return [...this.unitQueues, ...this.attendedQueues, this.allJobs].map((recorder) => recorder.history());
  }

  weekHistory(): WeekHistory {
    return {
      arrivedJobs: this.arrivedJobs,
      promisedJobs: this.promisedJobs,
      onTimeJobs: this.onTimeJobs,
      finishedJobs: this.finishedJobs,
      finishedParts: this.finishedParts,
      jobsInLab: this.allJobs.history().byWeek,
    };
  }

  partHoursHistories(): PartHoursHistory[] {
    return this.compiled.parts.map((part, index) => ({
      part: part.name,
      steps: part.steps,
      finishedJobs: this.partHours[index].finishedJobs,
      repeatedPieces: this.partHours[index].repeatedPieces,
      rebuiltPieces: this.partHours[index].rebuiltPieces,
      builtPieces: this.partHours[index].builtPieces,
      waitsTooLong: this.partHours[index].waitsTooLong,
      madeJobs: this.partHours[index].madeJobs,
      madePieces: this.partHours[index].madePieces,
      sentOutJobs: this.partHours[index].sentOutJobs,
      sentOutPieces: this.partHours[index].sentOutPieces,
      work: this.partHours[index].work,
      waits: this.partHours[index].waits,
    }));
  }

  peopleHistories(persons: readonly Person[]): PeopleHistory[] {
    for (const person of persons) this.bookBusy(person);
    return this.compiled.peopleGroups.map((group, index) => {
      const sums = this.people[index];
      const members = persons.filter((person) => person.group === index);
      const timeInState = new Float64Array(members.length * PERSON_STATES.length);
      members.forEach((person, position) => {
        timeInState.set(person.timeInState, position * PERSON_STATES.length);
      });
      return {
        group: group.name,
        count: group.count,
        timeInState,
        stages: this.compiled.workLabels,
        timeByStage: sums.timeByLabel,
        busyByHourOfWeek: sums.busyHours.averages(),
        onDutyByHourOfWeek: sums.dutyHours.averages(),
      };
    });
  }

  private weekOf(time: number): number {
    return Math.floor((time - this.window.start) / MILLISECONDS_PER_WEEK);
  }
}

function sum(values: Float64Array, count: number): number {
  let total = 0;
  for (let position = 0; position < count; position++) {
    // Most are zero, and each addition waits for the one before.
    if (values[position] !== 0) total += values[position];
  }
  return total;
}
