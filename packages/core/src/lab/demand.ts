import type { DatedJob } from '@buildweek/model';
import { type Arrivals, createPoissonArrivals, createRenewalArrivals } from '../kernel/arrivals.ts';
import { toMilliseconds } from '../kernel/clock.ts';
import { type CountSampler, createCountSampler } from '../kernel/count-sampler.ts';
import { PHASE_ARRIVALS } from '../kernel/event-calendar.ts';
import { createStream, type Stream } from '../kernel/streams.ts';
import { WeekFactors } from '../kernel/week-factors.ts';
import type { CompiledStream } from './compiled-lab.ts';
import { EVENT_ARRIVAL } from './events.ts';
import type { Job } from './job.ts';
import type { Simulation } from './simulation.ts';

/** What the work of a job is drawn from, for each stage of its route; null where nothing is random. */
interface WorkStreams {
  readonly workStreams: readonly (Stream | null)[];
  readonly rejectStreams: readonly (Stream | null)[];
  readonly requesterStreams: readonly (Stream | null)[];
}

/** What one demand stream draws from, in one replication; null where nothing is random. */
interface DemandSource extends WorkStreams {
  readonly compiled: CompiledStream;
  /** Times of arrival; null for dated jobs. */
  readonly arrivals: Arrivals | null;
  readonly jobsPerArrival: CountSampler | null;
  /** Elapsed times of dated jobs, ascending, with their positions in the list. */
  readonly dated: readonly { readonly time: number; readonly position: number }[];
  readonly arrivalStream: Stream;
  readonly burstStream: Stream;
  readonly quantityStream: Stream;
  readonly rushStream: Stream;
  nextDated: number;
  /** When a job of an endless backlog was replaced last, and how many more in that instant. */
  replacedAt: number;
  replacedAtOnce: number;
}

/** Jobs of an endless backlog that leave in one instant; more of them take no time at all. */
const MOST_AT_ONCE = 100_000;

/** Work of which it is known how long it takes; what is drawn for a build or a batch is not the job's own. */
function takeKnownWork({ part, stageWork }: Job, hours: Readonly<Record<string, number>>): void {
  part.stages.forEach(({ name, sampler }, index) => {
    const known = hours[name];
    if (known !== undefined && sampler !== null) stageWork[index] = toMilliseconds(known);
  });
}

/** Lets jobs arrive. Everything random about a job is drawn when it arrives, in arrival order. */
export class Demand {
  private readonly simulation: Simulation;
  private sources: readonly DemandSource[] = [];
  private weekFactors: WeekFactors | null = null;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  reset(): void {
    const { compiled, settings } = this.simulation;
    this.weekFactors = new WeekFactors(
      createStream(settings.seed, settings.replication, 'week factor', 'all demand'),
    );
    this.sources = compiled.streams.map((stream) => this.open(stream));
    const { calendar, startAt } = this.simulation;
    for (const source of this.sources) {
      if (source.compiled.stream.arrivals.kind !== 'kept in the lab') this.scheduleNext(source, 0);
      else calendar.schedule(startAt, PHASE_ARRIVALS, EVENT_ARRIVAL, source.compiled.index, 0);
    }
  }

  /** The moment of an arrival has come: its jobs enter, and the next one is set. */
  arrive(streamIndex: number): void {
    const source = this.sources[streamIndex];
    const { stream } = source.compiled;
    const { now } = this.simulation;
    if (stream.arrivals.kind === 'kept in the lab') {
      for (let job = 0; job < stream.arrivals.jobs; job++) this.admit(source, null);
      return;
    }
    if (stream.arrivals.kind === 'dated') {
      this.admit(source, stream.arrivals.jobs[source.dated[source.nextDated++].position]);
    } else {
      const jobs = source.jobsPerArrival === null ? 1 : source.jobsPerArrival.sample(source.burstStream());
      for (let job = 0; job < jobs; job++) this.admit(source, null);
    }
    this.scheduleNext(source, now);
  }

  /** A job has left the lab: an endless backlog gives the next one at once. */
  replace(streamIndex: number): void {
    const source = this.sources[streamIndex];
    if (source.compiled.stream.arrivals.kind !== 'kept in the lab') return;
    const { now } = this.simulation;
    source.replacedAtOnce = source.replacedAt === now ? source.replacedAtOnce + 1 : 0;
    source.replacedAt = now;
    if (source.replacedAtOnce > MOST_AT_ONCE) {
      throw new Error(
        `"${source.compiled.stream.name}" is kept in the lab, and its jobs take no time: they would never end.`,
      );
    }
    this.admit(source, null);
  }

  /** Draws the work of a job that arrives for all stages of its route, into `job.stageWork`. */
  drawWork(job: Job): void {
    this.drawFrom(job, this.sources[job.stream]);
  }

  /**
   * Draws the work of a revised job anew. Whether it is revised may depend on the lab, so it takes no number from the
   * streams that all jobs share: it has its own, keyed by job, revision and stage.
   */
  drawWorkAgain(job: Job): void {
    const { settings } = this.simulation;
    const { compiled, workStreams, rejectStreams, requesterStreams } = this.sources[job.stream];
    const keyed = (purpose: string) => (shared: Stream | null, stage: number) => {
      const owner = JSON.stringify([compiled.stream.name, job.numberInStream, job.revision, stage]);
      return shared === null ? null : createStream(settings.seed, settings.replication, purpose, owner);
    };
    this.drawFrom(job, {
      workStreams: workStreams.map(keyed('work of a revised job')),
      rejectStreams: rejectStreams.map(keyed('rejects of a revised job')),
      requesterStreams: requesterStreams.map(keyed('asks of a revised job')),
    });
  }

  private drawFrom(job: Job, { workStreams, rejectStreams, requesterStreams }: WorkStreams): void {
    const { stages } = job.part;
    for (let index = 0; index < stages.length; index++) {
      const stage = stages[index];
      if (stage.rejectShare > 0) job.rejectDraws[index] = (rejectStreams[index] as Stream)();
      if (stage.sampler === null) continue;
      const stream = workStreams[index];
      const draws = stage.basis === 'part' ? job.quantity : 1;
      let hours = 0;
      if (stream === null) hours = draws * stage.sampler.sample(0.5);
      else for (let draw = 0; draw < draws; draw++) hours += stage.sampler.sample(stream());
      // Whoever need not be asked does not keep anybody waiting.
      const isClear = stage.isForRequester && (requesterStreams[index] as Stream)() >= stage.requesterChance;
      job.stageWork[index] = isClear ? 0 : toMilliseconds(hours);
    }
  }

  /** @param given what is known of the job; null: nothing */
  private admit(source: DemandSource, given: DatedJob | null): void {
    const { jobs, flow, now, workingDays, loads, outside } = this.simulation;
    const { compiled } = source;
    // Drawn even when given, so that the stream does not depend on what the list says.
    const drawnQuantity = compiled.quantity.sample(compiled.quantityConstant ? 0.5 : source.quantityStream());
    const share = compiled.stream.rushShare;
    const drawnRush = share > 0 && source.rushStream() < share;
    const rush = given?.rush ?? drawnRush;
    const dueAt = workingDays.dueAfter(now, rush ? compiled.stream.rushDue : compiled.stream.due);
    const job = jobs.enter(compiled, given?.quantity ?? drawnQuantity, rush, now, dueAt);
    this.drawWork(job);
    if (given?.workHours !== undefined) takeKnownWork(job, given.workHours);
    this.simulation.requests.draw(job);
    if (!outside.takes(job)) flow.enterStage(loads.begin(job, 0));
  }

  private scheduleNext(source: DemandSource, after: number): void {
    const { calendar, startAt } = this.simulation;
    const { index } = source.compiled;
    let time = Number.POSITIVE_INFINITY;
    if (source.arrivals !== null) {
      // What came before the start is part of the state, or gone.
      do time = Math.round(source.arrivals.next(source.arrivalStream()));
      while (time < startAt);
    } else {
      while (source.nextDated < source.dated.length && source.dated[source.nextDated].time < startAt) {
        source.nextDated++;
      }
      if (source.nextDated < source.dated.length) time = source.dated[source.nextDated].time;
    }
    calendar.schedule(Math.max(time, after), PHASE_ARRIVALS, EVENT_ARRIVAL, index, 0);
  }

  private open(compiled: CompiledStream): DemandSource {
    const { settings, localTime } = this.simulation;
    const { stream, part } = compiled;
    const { arrivals } = stream;
    const open = (purpose: string): Stream =>
      createStream(settings.seed, settings.replication, purpose, stream.name);
    const jobsPerArrival = 'jobsPerArrival' in arrivals ? arrivals.jobsPerArrival : null;
    const isSingle =
      jobsPerArrival === null || (jobsPerArrival.kind === 'fixed' && jobsPerArrival.value === 1);
    return {
      compiled,
      arrivals:
        arrivals.kind === 'poisson'
          ? createPoissonArrivals(arrivals, localTime, this.weekFactors)
          : arrivals.kind === 'renewal'
            ? createRenewalArrivals(arrivals)
            : null,
      jobsPerArrival: isSingle || jobsPerArrival === null ? null : createCountSampler(jobsPerArrival),
      dated:
        arrivals.kind !== 'dated'
          ? []
          : arrivals.jobs
              .map((job, position) => ({ time: localTime.toElapsed(toMilliseconds(job.atHour)), position }))
              .sort((a, b) => a.time - b.time),
      arrivalStream: open('arrivals'),
      burstStream: open('jobs per arrival'),
      quantityStream: open('quantity'),
      rushStream: open('rush'),
      workStreams: part.stages.map((stage) => (stage.constant ? null : open(`work: ${stage.name}`))),
      rejectStreams: part.stages.map((stage) =>
        stage.rejectShare > 0 ? open(`rejects: ${stage.name}`) : null,
      ),
      requesterStreams: part.stages.map((stage) =>
        stage.isForRequester ? open(`asks: ${stage.name}`) : null,
      ),
      nextDated: 0,
      replacedAt: -1,
      replacedAtOnce: 0,
    };
  }
}
