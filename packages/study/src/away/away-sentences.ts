import { type AwayGroup, type Estimate, figureOf } from '@buildweek/results';
import { capital } from '../words/figures.ts';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/**
 * One sentence for each group, what costs most first.
 *
 * @param weeksAfter measured weeks behind the return
 */
export function awaySentences(groups: readonly AwayGroup[], awayWeeks: number, weeksAfter: number): string[] {
  const loss = ({ onTime, mostExtraJobs }: AwayGroup): number => {
    if (onTime?.during.difference.kind === 'estimate') return onTime.during.difference.value;
    return mostExtraJobs.kind === 'estimate' ? -mostExtraJobs.value : 0;
  };
  return [...groups]
    .sort((one, other) => loss(one) - loss(other))
    .map((group) => sentenceOf(group, awayWeeks, weeksAfter));
}

function sentenceOf(group: AwayGroup, awayWeeks: number, weeksAfter: number): string {
  const { onTime, mostExtraJobs } = group;
  const who = group.count === 1 ? `the only one of “${group.group}”` : `one of “${group.group}”`;
  const what = `${capital(weeksWords(awayWeeks))} without ${who}`;
  const recovers = recoveryWords(group, weeksAfter);
  const isOne = awayWeeks === 1;
  if (onTime !== null) {
    const { there, away, difference } = onTime.during;
    if (there.kind !== 'estimate' || away.kind !== 'estimate' || difference.kind !== 'estimate') {
      return `${what}: no job comes in these weeks.`;
    }
    if (difference.low > 0 || difference.high < 0) {
      const way = `${difference.value < 0 ? 'cut' : 'raise'}${isOne ? 's' : ''}`;
      return `${what} ${way} the share on time, of the jobs that come meanwhile, from ${share(there)} to ${share(away)}; ${recovers}.`;
    }
    return `${what} ${isOne ? 'does' : 'do'} not change the share on time by more than can be told from chance (${share(there)}, then ${share(away)}); ${recovers}.`;
  }
  const extra =
    mostExtraJobs.kind === 'estimate'
      ? `${isOne ? 'leaves' : 'leave'} up to ${figureOf(mostExtraJobs, 1, 1).value} more jobs in the lab`
      : isOne
        ? 'was played'
        : 'were played';
  return `${what} ${extra}; ${recovers}.`;
}

function recoveryWords({ recovery: { weeks, low, high } }: AwayGroup, weeksAfter: number): string {
  if (weeks === null) return `the lab has not recovered after ${weeksWords(weeksAfter)}`;
  if (weeks === 0 && high === 0) return 'by the return the lab is as usual';
  const range =
    low === weeks && high === weeks
      ? ''
      : high === null
        ? ` (${low ?? 0}, or more than ${weeksAfter})`
        : ` (${low ?? 0} to ${high})`;
  return `recovery takes ${weeks === 0 ? 'no week' : weeksWords(weeks)}${range}`;
}

function weeksWords(weeks: number): string {
  return `${NUMBERS[weeks] ?? weeks} ${weeks === 1 ? 'week' : 'weeks'}`;
}

function share(estimate: Estimate): string {
  return `${figureOf(estimate, 0.01, 0).value} %`;
}
