import type { StateSpan, TraceEntry } from '@buildweek/core';
import { grouped } from './grouped.ts';
import type { PlayedYear } from './play-year.ts';

/** One run as the machine itself would write it down. */
export interface PlayedRun {
  readonly machine: string;
  readonly start: number;
  /** Null: it is still printing when the log ends. */
  readonly end: number | null;
  readonly outcome: 'done' | 'failed' | 'broke down' | 'running';
  /** Numbers of the jobs in it, from 0. */
  readonly jobs: readonly number[];
  /** Name of the part type of the first of them; empty when nobody waits for them any more. */
  readonly part: string;
}

/**
 * The prints of all machines. A print that is broken off by a breakdown broke down; one whose machine is cleaned
 * before it prints again failed.
 *
 * @param until end of the log
 */
export function machineRuns({ entries, states }: PlayedYear, from: number, until: number): PlayedRun[] {
  const ofUnit = grouped(entries, ({ unit }) => unit);
  const prints = states.filter(
    ({ state, from: start }) => state === 'print' && start < until && start >= from,
  );
  const next = new Map<string, number>();
  return prints
    .sort((a, b) => b.from - a.from)
    .map((print) => {
      const machine = print.unit ?? '';
      const nextPrint = next.get(machine) ?? Number.POSITIVE_INFINITY;
      next.set(machine, print.from);
      return runOf(print, ofUnit.get(machine) ?? [], nextPrint, until);
    })
    .reverse();
}

function runOf(
  { unit, from, to }: StateSpan,
  entries: readonly TraceEntry[],
  nextPrint: number,
  until: number,
): PlayedRun {
  const begun = entries.filter(
    ({ time, what, phase, job }) =>
      time === from && phase === 'print' && (what === 'step starts' || what === 'step resumes') && job >= 0,
  );
  const own = {
    machine: unit ?? '',
    start: from,
    jobs: begun.map(({ job }) => job),
    part: begun[0]?.part ?? '',
  };
  if (to > until) return { ...own, end: null, outcome: 'running' };
  const broke = entries.some(({ time, what }) => time === to && what === 'breaks down');
  const cleaned = entries.some(
    ({ time, what, phase }) =>
      what === 'step starts' && phase === 'cleaning' && time >= to && time < Math.min(nextPrint, until),
  );
  return { ...own, end: to, outcome: broke ? 'broke down' : cleaned ? 'failed' : 'done' };
}
