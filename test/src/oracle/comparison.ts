import { createSimulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { OracleEvent } from './floor.ts';
import { playMinuteByMinute } from './oracle.ts';
import { lineOf } from './small-lab.ts';

const COMPARED_WEEKS = 2;
const WEEK = 7 * 24 * 3_600_000;

export interface Disagreement {
  /** Both timelines up to and with the first minute that differs. */
  readonly oracle: readonly string[];
  readonly simulator: readonly string[];
}

/**
 * Plays a lab on the oracle and on the simulator, and compares everything that happened to its jobs, and when
 * its people came and went, event by event. The order within one instant is not compared, and nothing is from
 * the moment on at which the rules leave open what comes first.
 *
 * @param lab what the oracle plays
 * @param simulated what the simulator plays, when it is to be another lab
 * @returns the timelines where they part, or null when they agree
 */
export function disagreementOn(lab: Lab, simulated: Lab = lab): Disagreement | null {
  const { events, undecidedAt, finishes } = playMinuteByMinute(lab, COMPARED_WEEKS);
  // The oracle stops when the last job has ended; the simulator goes on, and sees no window that begins later
  // than its own end, which is therefore put off.
  const isFinished = finishes.every((finish) => finish !== null);
  const end = isFinished ? (events.at(-1)?.time ?? 0) + 1 : COMPARED_WEEKS * WEEK;
  const until = Math.min(undecidedAt ?? Infinity, end);
  const { trace } = createSimulator(simulated).simulate({
    seed: 'oracle',
    replication: 0,
    ignoredWeeks: 0,
    weeks: COMPARED_WEEKS,
    capWeeks: 1,
    trace: true,
    queueWaits: false,
  });
  if (trace === null) throw new Error('The simulator wrote no trace.');
  const oracle = timeline(events, until);
  const simulator = timeline(trace, until);
  for (let row = 0; row < Math.max(oracle.length, simulator.length); row++) {
    if (oracle[row]?.line === simulator[row]?.line) continue;
    const time = Math.min(oracle[row]?.time ?? Infinity, simulator[row]?.time ?? Infinity);
    return {
      oracle: oracle.filter((entry) => entry.time <= time).map((entry) => entry.line),
      simulator: simulator.filter((entry) => entry.time <= time).map((entry) => entry.line),
    };
  }
  return null;
}

type Happening = Omit<OracleEvent, 'what'> & { readonly what: string };

/** The simulator also says how long was waited, which the oracle does not. */
const COMPARED: ReadonlySet<string> = new Set<OracleEvent['what']>([
  'job arrives',
  'job ends',
  'step starts',
  'step pauses',
  'step resumes',
  'step ends',
  'step is broken off',
  'breaks down',
  'is repaired',
  'chore starts',
  'chore ends',
  'on duty',
  'off duty',
]);

interface Row {
  readonly time: number;
  readonly line: string;
}

function timeline(events: readonly Happening[], until: number): Row[] {
  return withoutEmptySteps(events.filter((event) => COMPARED.has(event.what) && event.time < until))
    .map((event) => ({ time: event.time, line: lineOf(event) }))
    .sort((one, other) => one.time - other.time || (one.line < other.line ? -1 : 1));
}

/** Whether an unattended step of no length is written down at all says nothing of how the lab is played. */
function withoutEmptySteps(events: readonly Happening[]): Happening[] {
  const keyOf = ({ time, job, stage, phase, unit, pieces }: Happening): string =>
    JSON.stringify([time, job, stage, phase, unit, pieces]);
  const unattended = events.filter((event) => event.persons.length === 0);
  const starts = new Set(unattended.filter((event) => event.what === 'step starts').map(keyOf));
  const ends = new Set(unattended.filter((event) => event.what === 'step ends').map(keyOf));
  return events.filter((event) => {
    const isStep = event.what === 'step starts' || event.what === 'step ends';
    const empty = starts.has(keyOf(event)) && ends.has(keyOf(event));
    return !(isStep && event.persons.length === 0 && empty);
  });
}
