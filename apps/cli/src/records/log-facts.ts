import { createStream } from '@buildweek/core';
import {
  type ArrivalFacts,
  arrivalFacts,
  type CivilTime,
  countedWords,
  type LearnedWords,
  type LoggedJobs,
  logUntil,
  type MachineFacts,
  type MachineRun,
  machineFacts,
  type PartFacts,
  partFacts,
  runsUntil,
  type WorkingHours,
  workingHours,
} from '@buildweek/records';
import type { ReadLog } from './read-log.ts';

/** Monday to Friday, where a log does not tell. */
const USUAL_DAYS = [0, 1, 2, 3, 4];

/** What a log tells of the lab, and what was learned from it in the words of a scenario. */
export interface LogFacts {
  /** The part of the log that was used. */
  readonly log: LoggedJobs;
  readonly runs: readonly MachineRun[];
  readonly hours: WorkingHours | null;
  readonly machines: readonly MachineFacts[];
  readonly parts: readonly PartFacts[];
  readonly arrivals: ArrivalFacts;
  readonly learned: LearnedWords;
  /** Up to when the log was used. */
  readonly until: CivilTime;
}

/** @param until later rows are left out; null: none are */
export function logFacts(whole: ReadLog, until: CivilTime | null): LogFacts {
  const log = until === null ? whole : logUntil(whole, until);
  const runs = until === null ? whole.runs : runsUntil(whole.runs, until);
  const hours = workingHours(log.jobs);
  const machines = machineFacts(log.jobs, runs);
  const parts = partFacts(log.jobs, runs, hours?.days ?? USUAL_DAYS);
  const draw = createStream('records', 0, 'undo rounding', 'arrivals');
  const arrivals = arrivalFacts(log, hours, draw);
  const learned = countedWords(log, runs, parts, machines, arrivals);
  return { log, runs, hours, machines, parts, arrivals, learned, until: log.until };
}
