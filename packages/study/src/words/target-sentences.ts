import {
  CENTS,
  moneyEstimateText,
  moneyText,
  periodName,
  type TargetResult,
  type TargetVerdict,
  WHOLE,
} from '@buildweek/results';
import { shareWords } from './figures.ts';

/** How many targets are met, and which are not; nothing where there are none. */
export function targetSentences(targets: readonly TargetResult[], weeks: number): string[] {
  const [only] = targets;
  if (only === undefined) return [];
  const named = (one: TargetResult): string => `“${one.wording}”, ${foundWords(one, weeks)}`;
  if (targets.length === 1) return [`The target ${VERDICT_WORDS[only.verdict]}: ${named(only)}.`];
  const withVerdict = (verdict: TargetVerdict): readonly TargetResult[] =>
    targets.filter((one) => one.verdict === verdict);
  const met = withVerdict('met').length;
  const listOf = (words: string, some: readonly TargetResult[]): string[] => {
    if (some.length === 0) return [];
    const more = some.length - MOST_NAMED;
    return [
      `${words}: ${some.slice(0, MOST_NAMED).map(named).join('; ')}${more > 0 ? `; and ${more} more` : ''}`,
    ];
  };
  const parts = [
    met === targets.length ? `All ${met} targets are met` : `${met} of ${targets.length} targets are met`,
    ...listOf('missed', withVerdict('missed')),
    ...listOf('not decided at this precision', withVerdict('not decided')),
  ];
  return [`${parts.join('; ')}.`];
}

/** More of them are only counted: the table has them all. */
const MOST_NAMED = 2;

const VERDICT_WORDS: Readonly<Record<TargetVerdict, string>> = {
  met: 'is met',
  missed: 'is missed',
  'not decided': 'is not decided at this precision',
};

function foundWords({ found, periods, currency }: TargetResult, weeks: number): string {
  if (periods !== null) {
    return `found in ${shareWords(periods.found)} of ${periodName(weeks).replace(/^\S+/, (word) => `${word}s`)}`;
  }
  if (found.kind === 'known') return `which comes to ${moneyText(found.value, currency ?? '', WHOLE)}`;
  if (found.kind !== 'estimate') return 'nothing found';
  return `found ${currency === null ? shareWords(found) : moneyEstimateText(found, currency, CENTS)}`;
}
