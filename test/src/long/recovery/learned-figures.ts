import { createStream } from '@buildweek/core';
import {
  arrivalFacts,
  countedWords,
  type LearnedWords,
  machineFacts,
  partFacts,
  workingHours,
} from '@buildweek/records';
import type { KnownLaws, KnownLog } from './known-log.ts';

/** What is learned of a log, in the order of the record. */
export const FIGURES = [
  'jobs a week of a frequent part',
  'jobs a week of a rare part',
  'minutes of hand work on a job',
  'hours of a print',
  'per cent of builds that fail',
  'running hours between breakdowns',
] as const;
export type LearnedFigure = (typeof FIGURES)[number];

/** From one number to another. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

const FREQUENT = 0;
const RARE = 1;
const STAGE = 'remove supports';
const GROUP = 'resin';

export function truthOf(laws: KnownLaws, figure: LearnedFigure): number {
  switch (figure) {
    case 'jobs a week of a frequent part':
      return perWeekOf(laws, FREQUENT);
    case 'jobs a week of a rare part':
      return perWeekOf(laws, RARE);
    case 'minutes of hand work on a job':
      return laws.handWork.mean;
    case 'hours of a print':
      return laws.print.mean;
    case 'per cent of builds that fail':
      return 100 * laws.failureShare;
    case 'running hours between breakdowns':
      return laws.hoursBetweenBreakdowns;
  }
}

function perWeekOf({ parts }: KnownLaws, index: number): number {
  const part = parts[index];
  if (part === undefined) throw new Error('There are fewer parts.');
  return part.perWeek;
}

/**
 * Learns from a log as the command does, and takes the 95 % limits out of what stands in the scenario for people to read.
 */
export function learnedFigures(laws: KnownLaws, { jobs, runs }: KnownLog): Record<LearnedFigure, Limits> {
  const hours = workingHours(jobs.jobs);
  const parts = partFacts(jobs.jobs, runs, hours?.days ?? []);
  const machines = machineFacts(jobs.jobs, runs);
  const arrivals = arrivalFacts(jobs, hours, createStream('records', 0, 'undo rounding', 'arrivals'));
  const learned = countedWords(jobs, runs, parts, machines, arrivals);
  const frequent = laws.parts[FREQUENT]?.name ?? '';
  return {
    'jobs a week of a frequent part': jobsOf(learned, frequent),
    'jobs a week of a rare part': jobsOf(learned, laws.parts[RARE]?.name ?? ''),
    'minutes of hand work on a job': limitsIn(
      learned.stages.get(frequent)?.get(STAGE)?.source,
      /mean ([\d.]+) to ([\d.]+) min/,
    ),
    'hours of a print': limitsIn(learned.prints.get(GROUP)?.source, /mean ([\d.]+) to ([\d.]+) h/),
    'per cent of builds that fail': limitsIn(
      learned.fails.get(GROUP)?.source,
      /95 %: ([\d.]+) to ([\d.]+) %/,
    ),
    'running hours between breakdowns': betweenBreakdowns(learned.breakdowns.get(GROUP)?.source),
  };
}

function jobsOf(learned: LearnedWords, part: string): Limits {
  return limitsIn(learned.jobs.get(part)?.source, /95 %: ([\d.]+) to ([\d.]+)/);
}

/** The upper limit of the distance is open where no breakdown was seen. */
function betweenBreakdowns(source = ''): Limits {
  const low = /no more often than every ([\d.]+) h/.exec(source)?.[1];
  const high = /no more seldom than every ([\d.]+) h/.exec(source)?.[1];
  if (low === undefined) throw new Error(`There are no breakdowns in “${source}”.`);
  return { low: Number(low), high: high === undefined ? Number.POSITIVE_INFINITY : Number(high) };
}

function limitsIn(source = '', written: RegExp): Limits {
  const found = written.exec(source);
  if (found === null) throw new Error(`There are no limits in “${source}”.`);
  return { low: Number(found[1]), high: Number(found[2]) };
}
