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
const BATCHES = 40;

/**
 * Workload A: M/M/1 on the bare kernel, an arrival an hour, load 0.9. The mean wait is 8.1 h (D. Gross,
 * C. M. Harris, "Fundamentals of Queueing Theory", section 2.2, from memory).
 */
class QueueModel {
  private readonly calendar = new EventCalendar();
  private readonly gaps: Draws;
  private readonly services: Draws;
  private readonly queue = new NumberRing();
  private readonly customers: number;
  private isBusy = false;
  private arrived = 0;
  readonly waits: BatchMeans;

  constructor(customers: number, seed: string) {
    this.customers = customers;
    this.gaps = exponentials(1, createStream(seed, 0, 'arrivals', 'queue'));
    this.services = exponentials(0.9, createStream(seed, 0, 'service', 'queue'));
    this.waits = new BatchMeans(customers, BATCHES);
  }

  /** @returns the number of events */
  play(): number {
    const { calendar } = this;
    let events = 0;
    this.scheduleArrival(0);
    while (calendar.take()) {
      events++;
      if (calendar.kind === ARRIVAL) this.arrive(calendar.time);
      else this.endService(calendar.time);
    }
    return events;
  }

  private scheduleArrival(now: number): void {
    if (this.arrived === this.customers) return;
    const duration = toMilliseconds(this.gaps.next());
    this.calendar.schedule(now + duration, PHASE_ARRIVALS, ARRIVAL, 0, 0);
  }

  private arrive(now: number): void {
    this.arrived++;
    this.scheduleArrival(now);
    if (this.isBusy) this.queue.push(now);
    else this.begin(now, now);
  }

  private begin(arrivedAt: number, now: number): void {
    this.waits.add(now - arrivedAt);
    this.isBusy = true;
    const duration = toMilliseconds(this.services.next());
    this.calendar.schedule(now + duration, PHASE_ENDS, END, 0, 0);
  }

  private endService(now: number): void {
    this.isBusy = false;
    if (this.queue.length > 0) this.begin(this.queue.shift(), now);
  }
}

function exponentials(mean: number, stream: Stream): Draws {
  return new Draws(createSampler({ kind: 'exponential', mean }), stream);
}

/** Plays workload A. */
export function playQueue(customers: number, seed: string): WorkloadResult {
  const model = new QueueModel(customers, seed);
  const events = model.play();
  return { events, answers: { 'mean wait, h': model.waits.means(MILLISECONDS_PER_HOUR) } };
}
