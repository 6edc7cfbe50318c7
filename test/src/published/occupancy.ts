import type { History, TraceEntry, TraceEvent } from '@buildweek/core';

/** What changes the number of jobs in the lab. */
const CHANGES: Readonly<Partial<Record<TraceEvent, number>>> = {
  'job arrives': 1,
  'job ends': -1,
  'job is cancelled': -1,
};

/**
 * Share of the measured time with 0, 1, 2, … jobs in the lab, from the arrivals and ends of a trace.
 *
 * @returns one entry for each number up to the largest; together 1
 */
export function occupancyOf(
  { windowStart, windowEnd }: Pick<History, 'windowStart' | 'windowEnd'>,
  trace: readonly Pick<TraceEntry, 'time' | 'what'>[],
): Float64Array {
  const times: number[] = [];
  let jobs = 0;
  let since = windowStart;
  const until = (time: number): void => {
    const end = Math.min(time, windowEnd);
    if (end <= since) return;
    times[jobs] = (times[jobs] ?? 0) + end - since;
    since = end;
  };
  for (const { what, time } of trace) {
    const change = CHANGES[what];
    if (change === undefined) continue;
    until(time);
    jobs += change;
  }
  until(windowEnd);
  return Float64Array.from({ length: times.length }, (_, number) => {
    return (times[number] ?? 0) / (windowEnd - windowStart);
  });
}

/** Hours of the arrivals in the measured weeks, since their start. */
export function arrivalsOf(
  { windowStart, windowEnd }: Pick<History, 'windowStart' | 'windowEnd'>,
  trace: readonly Pick<TraceEntry, 'time' | 'what'>[],
): Float64Array {
  const inside = trace.filter(
    ({ what, time }) => what === 'job arrives' && time >= windowStart && time < windowEnd,
  );
  return Float64Array.from(inside, ({ time }) => (time - windowStart) / 3_600_000);
}
