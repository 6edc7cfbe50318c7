import type { BusyTarget, JobSelection, Target, TargetMeaning, TimeAllowed } from '@buildweek/model';
import { periodName } from '@buildweek/results';
import { percent } from '../words/figures.ts';

/**
 * Of what a target speaks, in one sentence: of which jobs or hours, counted how, in the long run or in each period.
 *
 * @param weeks measured: the length of a period
 */
export function targetMeaning(target: Target, weeks: number): string {
  if (target.kind === 'budget') return BUDGET_WORDS[target.of];
  if (target.kind === 'cost per part') return COST_WORDS;
  const { meaning } = target;
  const words = whole(target, period(meaning, weeks));
  if (meaning.kind === 'long run') return `${words}.`;
  const periods = periodName(weeks).replace(/^\S+/, (word) => `${word}s`);
  return `${words}; at least ${percent(meaning.chance)} % of all ${periods} have to meet it.`;
}

const BUDGET_WORDS = {
  purchases:
    'What has to be bought beyond the machines and stations that are owned; known from the scenario.',
  year: 'What the lab costs in a year whatever it does: equipment spread over its life with interest, upkeep, hours of the roster, other costs; known from the scenario.',
} as const;

const COST_WORDS =
  'All that the lab costs in the long run, for each finished part, those made outside with them.';

type SharedTarget = Extract<Target, { readonly meaning: TargetMeaning }>;

function whole(target: SharedTarget, when: When): string {
  switch (target.kind) {
    case 'share within':
      return `Of ${jobsWords(target.jobs, '', when)}, ${timeWords(target.within)}; jobs that are never finished are late`;
    case 'on time':
      return `Of ${jobsWords(target.jobs, ' with a promise', when)}; jobs that are never finished are late`;
    case 'busy':
      return useWords(target, when);
  }
}

/** How time is spoken of: "all jobs in the long run", "the jobs that come in one quarter". */
interface When {
  readonly isLongRun: boolean;
  /** `one quarter`. */
  readonly period: string;
}

function period(meaning: TargetMeaning, weeks: number): When {
  return { isLongRun: meaning.kind === 'long run', period: `one ${periodName(weeks)}` };
}

function jobsWords({ part, rush }: JobSelection, more: string, when: When): string {
  const priority = rush === null ? '' : rush ? 'rush ' : 'normal ';
  const jobs = `${priority}jobs${part === null ? '' : ` of “${part}”`}${more}`;
  return when.isLongRun ? `all ${jobs} in the long run` : `the ${jobs} that come in ${when.period}`;
}

function timeWords(within: TimeAllowed): string {
  if (within.kind === 'clock') {
    return `within ${Number(within.hours.toFixed(2))} h by the clock from the complete file to the last good part`;
  }
  const { days, cutOffHour } = within;
  const day =
    days === 0
      ? 'of the day of the complete file'
      : `of the ${ordinal(days)} working day after the complete file`;
  const cutOff = cutOffHour === null ? '' : ` (from ${clock(cutOffHour)} on a file counts for the next)`;
  return `by closing time ${day}${cutOff}`;
}

function ordinal(number: number): string {
  const last = number % 10;
  const isTeen = number % 100 >= 11 && number % 100 <= 13;
  const ending = isTeen ? 'th' : last === 1 ? 'st' : last === 2 ? 'nd' : last === 3 ? 'rd' : 'th';
  return `${number}${ending}`;
}

function clock(hour: number): string {
  const minutes = Math.round(hour * 60);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

function useWords({ of, group }: BusyTarget, when: When): string {
  const whose = group === null ? `all ${of} together` : `“${group}”`;
  const time = when.isLongRun ? 'in the long run' : `in ${when.period}`;
  return of === 'people'
    ? `Of the hours on duty of ${whose} ${time}: work and other duties, overtime left out`
    : `Of all hours of the clock of ${whose} ${time}: at work, in maintenance, printing a test or broken down; not idle, waiting (to fill, to be started, to be unloaded) or off`;
}
