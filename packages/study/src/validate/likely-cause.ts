import { formatNumber, type HeldPart, type HeldStage } from '@buildweek/results';

/** A stretch that makes less of the whole difference is not named. */
const LEAST_SHARE = 0.25;

/** A smaller difference of work is not worth a sentence, however sure it is. */
const LEAST_PERCENT = 5;

const WORDS: Readonly<Record<HeldStage['what'], string>> = {
  'waiting before': 'waiting before',
  'at the stage': 'the time at',
  work: 'work at',
  'up to its end': 'the time up to the end of',
};

/**
 * What is likely behind a part that is slower or faster than modelled: the stretch of its route that differs most in
 * this direction, and more than chance does. Where the log knows no stages, or none stands out, it says so.
 *
 * @param stages of all parts
 */
export function likelyCause(part: Omit<HeldPart, 'cause'>, stages: readonly HeldStage[]): string | null {
  if (part.outcome !== 'slower' && part.outcome !== 'faster') return null;
  const own = stages.filter((one) => one.part === part.part);
  if (own.length === 0) return 'the log does not tell where, because it has no times of their stages';
  const sign = part.outcome === 'slower' ? 1 : -1;
  const whole = sign * (part.leadTime.observed - part.leadTime.expected);
  const apart = own.filter(({ observed, usualLow, usualHigh }) =>
    sign > 0 ? observed > usualHigh : observed < usualLow,
  );
  const difference = ({ observed, expected }: HeldStage): number => sign * (observed - expected);
  const most = apart.reduce<HeldStage | null>(
    (found, one) => (found === null || difference(one) > difference(found) ? one : found),
    null,
  );
  if (most === null || difference(most) < LEAST_SHARE * whole) {
    return 'no stage of which the log has times stands out';
  }
  return `likely cause: ${WORDS[most.what]} “${most.stage}” (${besideWords(most)})`;
}

/** `21.3 h on average, not 4.0 h`. */
function besideWords({ observed, expected }: HeldStage): string {
  const decimals = Math.max(observed, expected) < 1 ? 2 : 1;
  return `${formatNumber(observed, decimals)} h on average, not ${formatNumber(expected, decimals)} h`;
}

/**
 * Work that takes longer or shorter than modelled, where the log has the work itself: what to mend first in the
 * scenario, however little it matters to lead times.
 */
export function workSentences(stages: readonly HeldStage[]): string[] {
  return stages.flatMap((one) => {
    const { part, stage, what, observed, expected, standsOut } = one;
    const share = Math.round(Math.abs(observed / expected - 1) * 100);
    if (what !== 'work' || !standsOut || share < LEAST_PERCENT) return [];
    return [
      `Beside the check: work at “${stage}” of “${part}” takes ${share} % ${observed > expected ? 'longer' : 'less long'} than modelled (${besideWords(one)}).`,
    ];
  });
}
