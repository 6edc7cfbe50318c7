import {
  CENTS,
  moneyEstimateText,
  moneyText,
  periodName,
  type TargetResult,
  type TargetVerdict,
  WHOLE,
} from '@buildweek/results';
import { formatEstimate, formatLevel, PERCENT } from './format.ts';

const NO_BREAK = '\u00a0';

/** A sign for each verdict, so that it shows without any colour. */
export const VERDICT_MARKS: Readonly<Record<TargetVerdict, string>> = {
  met: '✓',
  missed: '✗',
  'not decided': '?',
};

/** "91 % (90 to 92)", "in 71 % (62 to 79) of quarters", "38 600 EUR", or why there is nothing. */
export function targetFound({ found, periods, currency }: TargetResult, weeks: number): string {
  if (periods !== null) {
    return `in ${formatEstimate(periods.found, PERCENT)} of ${periodName(weeks).replace(/^\S+/, (word) => `${word}s`)}`;
  }
  if (found.kind === 'known') return moneyText(found.value, currency ?? '', WHOLE);
  if (found.kind !== 'estimate') return `not given: ${found.reason}`;
  return currency === null ? formatEstimate(found, PERCENT) : moneyEstimateText(found, currency, CENTS);
}

/** "99.2 % confidence" of what was decided; "83.1 % confidence for met" where it was not; empty where there is none. */
export function targetConfidence({ confidence, verdict, found }: TargetResult): string {
  if (found.kind === 'known') return 'known beforehand';
  if (confidence === null) return '';
  if (verdict !== 'not decided') return `${confidenceFigure(confidence[verdict])} confidence`;
  return confidence.met >= confidence.missed
    ? `${confidenceFigure(confidence.met)} confidence for met`
    : `${confidenceFigure(confidence.missed)} confidence for missed`;
}

/** Rounded down, so that what is not enough does not look as if it were. */
function confidenceFigure(confidence: number): string {
  const percent = Math.floor(confidence * 1000) / 10;
  return percent >= 99.9 ? `over 99.9${NO_BREAK}%` : `${percent.toFixed(1)}${NO_BREAK}%`;
}

/** What the confidences are, for below a table of targets. */
export function confidenceNote(targets: readonly TargetResult[]): string {
  const [first] = targets;
  if (first === undefined) return '';
  return `Confidence is one-sided and says how clearly the replications speak for the verdict, not how probable it is; from ${formatLevel(first.level)} on a target is called met or missed. Each target is judged by itself.`;
}
