import { MILLISECONDS_PER_HOUR, toMilliseconds } from '../src/kernel/clock.ts';
import { EventCalendar, PHASE_ARRIVALS, PHASE_ENDS } from '../src/kernel/event-calendar.ts';
import { createSampler } from '../src/kernel/sampler.ts';
import { createStream } from '../src/kernel/streams.ts';
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
export function playBreakdowns(customers: number, seed: string): WorkloadResult {
  const calendar = new EventCalendar();
  const gap = createSampler({ kind: 'exponential', mean: 1 / 6 });
  const service = createSampler({ kind: 'exponential', mean: 1 });
  const up = createSampler({ kind: 'exponential', mean: 100 });
  const down = createSampler({ kind: 'exponential', mean: 10 });
  const gaps = createStream(seed, 0, 'arrivals', 'queue');
  const services = createStream(seed, 0, 'service', 'queue');
  const failures = Array.from({ length: SERVERS }, (_, server) =>
    createStream(seed, 0, 'breakdowns', `server ${server + 1}`),
  );
  const queue = new NumberRing();
  const waits = new BatchMeans(customers, BATCHES);
  const stays = new BatchMeans(customers, BATCHES);
  const arrivedAt = new Float64Array(SERVERS);
  const endsAt = new Float64Array(SERVERS);
  const remaining = new Float64Array(SERVERS);
  const stamps = new Int32Array(SERVERS);
  const isBusy = new Uint8Array(SERVERS);
  const isDown = new Uint8Array(SERVERS);
  let arrived = 0;
  let finished = 0;
  let events = 0;

  const serve = (server: number, duration: number, now: number): void => {
    endsAt[server] = now + duration;
    calendar.schedule(now + duration, PHASE_ENDS, END, server, ++stamps[server]);
  };
  const begin = (server: number, arrival: number, now: number): void => {
    waits.add(now - arrival);
    isBusy[server] = 1;
    arrivedAt[server] = arrival;
    serve(server, toMilliseconds(service.sample(services())), now);
  };
  const freeServer = (): number => {
    for (let server = 0; server < SERVERS; server++) {
      if (isBusy[server] === 0 && isDown[server] === 0) return server;
    }
    return -1;
  };

  calendar.schedule(toMilliseconds(gap.sample(gaps())), PHASE_ARRIVALS, ARRIVAL, 0, 0);
  for (let server = 0; server < SERVERS; server++) {
    calendar.schedule(toMilliseconds(up.sample(failures[server]())), PHASE_ENDS, FAILURE, server, 0);
  }
  while (finished < customers && calendar.take()) {
    const now = calendar.time;
    const server = calendar.subject;
    switch (calendar.kind) {
      case ARRIVAL: {
        events++;
        arrived++;
        if (arrived < customers) {
          calendar.schedule(now + toMilliseconds(gap.sample(gaps())), PHASE_ARRIVALS, ARRIVAL, 0, 0);
        }
        const free = freeServer();
        if (free < 0) queue.push(now);
        else begin(free, now, now);
        break;
      }
      case END:
        if (calendar.stamp !== stamps[server]) break;
        events++;
        finished++;
        stays.add(now - arrivedAt[server]);
        isBusy[server] = 0;
        if (queue.length > 0) begin(server, queue.shift(), now);
        break;
      case FAILURE:
        events++;
        isDown[server] = 1;
        stamps[server]++;
        remaining[server] = endsAt[server] - now;
        calendar.schedule(
          now + toMilliseconds(down.sample(failures[server]())),
          PHASE_ENDS,
          REPAIR,
          server,
          0,
        );
        break;
      case REPAIR:
        events++;
        isDown[server] = 0;
        calendar.schedule(
          now + toMilliseconds(up.sample(failures[server]())),
          PHASE_ENDS,
          FAILURE,
          server,
          0,
        );
        if (isBusy[server] === 1) serve(server, remaining[server], now);
        else if (queue.length > 0) begin(server, queue.shift(), now);
        break;
    }
  }
  return {
    events,
    answers: {
      'mean wait, h': waits.means(MILLISECONDS_PER_HOUR),
      'mean stay, h': stays.means(MILLISECONDS_PER_HOUR),
    },
  };
}
