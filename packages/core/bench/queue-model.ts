import { MILLISECONDS_PER_HOUR, toMilliseconds } from '../src/kernel/clock.ts';
import { EventCalendar, PHASE_ARRIVALS, PHASE_ENDS } from '../src/kernel/event-calendar.ts';
import { createSampler } from '../src/kernel/sampler.ts';
import { createStream } from '../src/kernel/streams.ts';
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
export function playQueue(customers: number, seed: string): WorkloadResult {
  const calendar = new EventCalendar();
  const gap = createSampler({ kind: 'exponential', mean: 1 });
  const service = createSampler({ kind: 'exponential', mean: 0.9 });
  const gaps = createStream(seed, 0, 'arrivals', 'queue');
  const services = createStream(seed, 0, 'service', 'queue');
  const queue = new NumberRing();
  const waits = new BatchMeans(customers, BATCHES);
  let isBusy = false;
  let arrived = 0;
  let events = 0;
  const begin = (arrivedAt: number, now: number): void => {
    waits.add(now - arrivedAt);
    isBusy = true;
    calendar.schedule(now + toMilliseconds(service.sample(services())), PHASE_ENDS, END, 0, 0);
  };
  calendar.schedule(toMilliseconds(gap.sample(gaps())), PHASE_ARRIVALS, ARRIVAL, 0, 0);
  while (calendar.take()) {
    const now = calendar.time;
    events++;
    if (calendar.kind === ARRIVAL) {
      arrived++;
      if (arrived < customers) {
        calendar.schedule(now + toMilliseconds(gap.sample(gaps())), PHASE_ARRIVALS, ARRIVAL, 0, 0);
      }
      if (isBusy) queue.push(now);
      else begin(now, now);
    } else {
      isBusy = false;
      if (queue.length > 0) begin(queue.shift(), now);
    }
  }
  return { events, answers: { 'mean wait, h': waits.means(MILLISECONDS_PER_HOUR) } };
}
