import {
  countedWords,
  type LearnedWords,
  type MachineFacts,
  machineFacts,
  type PartFacts,
  partFacts,
  type WorkingHours,
  workingHours,
} from '@buildweek/records';
import type { ReadLog } from './read-log.ts';

/** Monday to Friday, where a log does not tell. */
const USUAL_DAYS = [0, 1, 2, 3, 4];

/** What a log tells of the lab, and what was learned from it in the words of a scenario. */
export interface LogFacts {
  readonly hours: WorkingHours | null;
  readonly machines: readonly MachineFacts[];
  readonly parts: readonly PartFacts[];
  readonly learned: LearnedWords;
}

export function logFacts(log: ReadLog): LogFacts {
  const hours = workingHours(log.jobs);
  const machines = machineFacts(log.jobs, log.runs);
  const parts = partFacts(log.jobs, log.runs, hours?.days ?? USUAL_DAYS);
  return { hours, machines, parts, learned: countedWords(log, log.runs, parts, machines) };
}
