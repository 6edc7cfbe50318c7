import { createLocalTime, createSimulator, type StateSpan, type TraceEntry } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import {
  changeScenario,
  formatProblem,
  readChanges,
  readScenario,
  type ShapeReader,
} from '@buildweek/scenario';
import { CALENDAR_CHANGES, LOG_START, TRUE_CHANGES } from './truth.ts';

const DAY = 86_400_000;
/** Weeks that are played before the log begins, so that it begins in an ordinary week. */
const WEEKS_BEFORE = 4;
const WEEKS = 54;

/** A year of the changed lab. Times are those on the wall clock of the lab, milliseconds since 1970. */
export interface PlayedYear {
  readonly lab: Lab;
  readonly entries: readonly TraceEntry[];
  readonly states: readonly StateSpan[];
}

/**
 * Plays the year of the log, with everything that happens written down.
 * @param demo the scenario that the lab differs from
 */
export function playYear(demo: string, shapes: ShapeReader): PlayedYear {
  const start = new Date(Date.parse(LOG_START) - WEEKS_BEFORE * 7 * DAY).toISOString().slice(0, 10);
  const changes = [...TRUE_CHANGES, ...CALENDAR_CHANGES, `starts: ${start}`].join('; ');
  const text = changeScenario(demo, readChanges(changes));
  const reading = readScenario(text, 'demo.yaml', () => null, shapes);
  if (reading.kind !== 'scenario') throw new Error(reading.problems.map(formatProblem).join('\n'));
  const { lab } = reading;
  const { trace, states } = createSimulator(lab).simulate({
    seed: 'demo log',
    replication: 0,
    ignoredWeeks: 0,
    weeks: WEEKS_BEFORE + WEEKS,
    capWeeks: 0,
    trace: true,
    queueWaits: false,
  });
  const clock = createLocalTime(lab.clockChanges);
  const at = (time: number): number => Date.parse(start) + clock.toLocal(time);
  return {
    lab,
    entries: (trace ?? []).map((entry) => ({
      ...entry,
      time: at(entry.time),
      dueAt: entry.dueAt === null ? null : at(entry.dueAt),
    })),
    states: (states ?? []).map((span) => ({ ...span, from: at(span.from), to: at(span.to) })),
  };
}
