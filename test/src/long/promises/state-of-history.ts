import { MILLISECONDS_PER_HOUR, type TraceEntry } from '@buildweek/core';
import type { InitialJob, InitialState, Lab } from '@buildweek/model';

/**
 * What stands in a lab at a moment at which nobody works: what somebody who walks through it at midnight and looks at
 * the displays of the machines would write down. Hours count from that moment.
 *
 * What is under way is known with its end, which the trace tells afterwards: a print by its display, what is left of a
 * piece of work that was put down. Of what has not begun nothing is known.
 *
 * @param trace of a whole play, in order
 * @param at elapsed milliseconds; nobody works then
 */
export function stateAt(lab: Lab, trace: readonly TraceEntry[], at: number): InitialState {
  const jobs: InitialJob[] = [];
  const held = new Map<string, { until: number; jobs: number[] }>();
  const byJob = new Map<number, TraceEntry[]>();
  for (const entry of trace) {
    if (entry.job >= 0) byJob.set(entry.job, [...(byJob.get(entry.job) ?? []), entry]);
  }
  for (const entries of byJob.values()) {
    const arrival = entries.find(({ what }) => what === 'job arrives');
    const end = entries.find(({ what }) => what === 'job ends');
    if (arrival === undefined || arrival.time >= at || (end !== undefined && end.time <= at)) continue;
    const stream = lab.demand.find(({ part }) => part === arrival.part);
    const part = lab.parts.find(({ name }) => name === arrival.part);
    if (stream === undefined || part === undefined) throw new Error(`There is no part "${arrival.part}".`);
    const { stage, remaining, machine, until } = placeOf(entries, part.stages, at);
    if (machine !== null) {
      const build = held.get(machine) ?? { until, jobs: [] };
      held.set(machine, { until, jobs: [...build.jobs, jobs.length] });
    }
    jobs.push({
      stream: stream.name,
      quantity: arrival.pieces,
      rush: arrival.rush,
      arrivedAtHour: hoursFrom(arrival.time, at),
      dueAtHour: arrival.dueAt === null ? null : hoursFrom(arrival.dueAt, at),
      stage,
      remainingHours: remaining,
    });
  }
  return {
    jobs,
    machines: [...held].map(([machine, build]) => ({
      machine,
      busyUntilHour: Math.max(0, hoursFrom(build.until, at)),
      material: null,
      jobs: build.jobs,
    })),
  };
}

interface Place {
  readonly stage: string;
  readonly remaining: number | null;
  readonly machine: string | null;
  /** When its build is done. */
  readonly until: number;
}

function placeOf(entries: readonly TraceEntry[], stages: Lab['parts'][number]['stages'], at: number): Place {
  for (const stage of stages) {
    const own = entries.filter((entry) => entry.stage === stage.name && entry.what.startsWith('step '));
    const last = own.filter(
      ({ what, phase }) => what === 'step ends' && (stage.kind !== 'build' || phase === 'unload'),
    );
    if (last.some(({ time }) => time <= at)) continue;
    const begun = own.some(({ time, what }) => what === 'step starts' && time <= at);
    const place = { stage: stage.name, remaining: null, machine: null, until: 0 };
    if (!begun) return place;
    if (stage.kind === 'build') {
      const printed = own.find(({ what, phase }) => what === 'step ends' && phase === 'print');
      const machine = own.find(({ unit }) => unit !== null)?.unit ?? null;
      return { ...place, machine, until: printed?.time ?? Number.POSITIVE_INFINITY };
    }
    if (stage.kind === 'wait') return { ...place, remaining: hoursFrom(last[0]?.time ?? at, at) };
    return { ...place, remaining: workAfter(own, at) };
  }
  throw new Error('A job that is not finished has no stage left.');
}

/** Hours of work on a stage after a moment at which it is put down. */
function workAfter(own: readonly TraceEntry[], at: number): number {
  let hours = 0;
  let since: number | null = null;
  for (const { time, what } of own) {
    if (time < at) continue;
    if (what === 'step resumes') since = time;
    else if ((what === 'step pauses' || what === 'step ends') && since !== null) {
      hours += (time - since) / MILLISECONDS_PER_HOUR;
      since = null;
    }
  }
  return hours;
}

function hoursFrom(time: number, at: number): number {
  return (time - at) / MILLISECONDS_PER_HOUR;
}
