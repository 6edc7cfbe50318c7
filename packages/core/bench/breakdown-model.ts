import { MILLISECONDS_PER_HOUR, toMilliseconds } from '../src/kernel/clock.ts';
import { Draws } from '../src/kernel/draws.ts';
import { EventCalendar, PHASE_ARRIVALS, PHASE_ENDS } from '../src/kernel/event-calendar.ts';
import { createSampler } from '../src/kernel/sampler.ts';
import { createStream, type Stream } from '../src/kernel/streams.ts';
import { BatchMeans } from './batch-means.ts';
import { NumberRing } from './number-ring.ts';
import type { WorkloadResult } from './workload.ts';

const ARRIVAL = 0;
const END = 1;
const FAILURE = 2;
const REPAIR = 3;
const SERVERS = 8;
const BATCHES = 40;

/**
 * Workload B: eight servers on the bare kernel, each of which fails by the clock (mean time to failure 100 h,
 * to repair 10 h) and then goes on with what it was at; 6 arrivals an hour, mean service 1 h.
 */
class BreakdownModel {
  private readonly calendar = new EventCalendar();
  private readonly gaps: Draws;
  private readonly services: Draws;
  private readonly up = createSampler({ kind: 'exponential', mean: 100 });
  private readonly down = createSampler({ kind: 'exponential', mean: 10 });
  private readonly failures: readonly Stream[];
  private readonly queue = new NumberRing();
  private readonly arrivedAt = new Float64Array(SERVERS);
  private readonly endsAt = new Float64Array(SERVERS);
  private readonly remaining = new Float64Array(SERVERS);
  private readonly stamps = new Int32Array(SERVERS);
  private readonly isBusy = new Uint8Array(SERVERS);
  private readonly isDown = new Uint8Array(SERVERS);
  private readonly customers: number;
  private arrived = 0;
  private finished = 0;
  readonly waits: BatchMeans;
  readonly stays: BatchMeans;

  constructor(customers: number, seed: string) {
    this.customers = customers;
    this.gaps = exponentials(1 / 6, createStream(seed, 0, 'arrivals', 'queue'));
    this.services = exponentials(1, createStream(seed, 0, 'service', 'queue'));
    this.failures = Array.from({ length: SERVERS }, (_, server) =>
      createStream(seed, 0, 'breakdowns', `server ${server + 1}`),
    );
    this.waits = new BatchMeans(customers, BATCHES);
    this.stays = new BatchMeans(customers, BATCHES);
  }

  /** @returns the number of events */
  play(): number {
    const { calendar, customers } = this;
    let events = 0;
    this.scheduleArrival();
    for (let server = 0; server < SERVERS; server++) this.scheduleFailure(server);
    while (this.finished < customers && calendar.take()) {
      const { kind, subject, stamp } = calendar;
      if (kind === END && stamp !== this.stamps[subject]) continue;
      events++;
      if (kind === ARRIVAL) this.arrive();
      else if (kind === END) this.endService(subject);
      else if (kind === FAILURE) this.fail(subject);
      else this.bringBack(subject);
    }
    return events;
  }

  private scheduleArrival(): void {
    const { calendar } = this;
    calendar.schedule(calendar.time + toMilliseconds(this.gaps.next()), PHASE_ARRIVALS, ARRIVAL, 0, 0);
  }

  private scheduleFailure(server: number): void {
    const { calendar } = this;
    const duration = toMilliseconds(this.up.sample(this.failures[server]()));
    calendar.schedule(calendar.time + duration, PHASE_ENDS, FAILURE, server, 0);
  }

  private arrive(): void {
    if (++this.arrived < this.customers) this.scheduleArrival();
    const { time } = this.calendar;
    for (let server = 0; server < SERVERS; server++) {
      if (this.isBusy[server] === 0 && this.isDown[server] === 0) {
        this.begin(server, time);
        return;
      }
    }
    this.queue.push(time);
  }

  private begin(server: number, arrival: number): void {
    this.waits.add(this.calendar.time - arrival);
    this.isBusy[server] = 1;
    this.arrivedAt[server] = arrival;
    this.remaining[server] = toMilliseconds(this.services.next());
    this.serve(server);
  }

  private serve(server: number): void {
    const { calendar, endsAt } = this;
    endsAt[server] = calendar.time + this.remaining[server];
    calendar.schedule(endsAt[server], PHASE_ENDS, END, server, ++this.stamps[server]);
  }

  private endService(server: number): void {
    this.finished++;
    this.stays.add(this.calendar.time - this.arrivedAt[server]);
    this.isBusy[server] = 0;
    if (this.queue.length > 0) this.begin(server, this.queue.shift());
  }

  private fail(server: number): void {
    const { calendar } = this;
    this.isDown[server] = 1;
    this.stamps[server]++;
    this.remaining[server] = this.endsAt[server] - calendar.time;
    const duration = toMilliseconds(this.down.sample(this.failures[server]()));
    calendar.schedule(calendar.time + duration, PHASE_ENDS, REPAIR, server, 0);
  }

  private bringBack(server: number): void {
    this.isDown[server] = 0;
    this.scheduleFailure(server);
    if (this.isBusy[server] === 1) this.serve(server);
    else if (this.queue.length > 0) this.begin(server, this.queue.shift());
  }
}

function exponentials(mean: number, stream: Stream): Draws {
  return new Draws(createSampler({ kind: 'exponential', mean }), stream);
}

/** Plays workload B. */
export function playBreakdowns(customers: number, seed: string): WorkloadResult {
  const model = new BreakdownModel(customers, seed);
  const events = model.play();
  return {
    events,
    answers: {
      'mean wait, h': model.waits.means(MILLISECONDS_PER_HOUR),
      'mean stay, h': model.stays.means(MILLISECONDS_PER_HOUR),
    },
  };
}
