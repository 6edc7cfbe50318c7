import { piecewiseRates } from '@buildweek/statistics';
import type { WorkingHours } from '../facts/working-hours.ts';
import type { CivilTime } from '../logged-jobs.ts';

const HOUR = 3_600_000;
const NOON = 12;
/** A cut from here on ends the day; one before it ends the morning. */
const LATE = 14;
const MOST_PARTS = 3;

/** Hours at which the morning ends, and the time in which most jobs are asked for. */
export interface DayParts {
  readonly noon: number;
  /** The end of the working hours, or before it where the counts fall off. */
  readonly dayEnd: number;
}

/**
 * Where a working day divides, by the counts of its hours: as many parts as are worth their parameters by Schwarz's
 * criterion, three at most. At noon, and with the end of the working hours, where they tell nothing.
 * Source: G. Schwarz, "Estimating the dimension of a model", Annals of Statistics 6 (1978), 461–464.
 */
export function dayParts(times: readonly CivilTime[], { fromHour, toHour }: WorkingHours): DayParts {
  const counts = new Array<number>(toHour - fromHour).fill(0);
  let jobs = 0;
  for (const time of times) {
    const hour = Math.floor(time / HOUR) % 24;
    if (hour < fromHour || hour >= toHour) continue;
    counts[hour - fromHour] = (counts[hour - fromHour] ?? 0) + 1;
    jobs++;
  }
  const usual = fromHour < NOON && toHour > NOON ? NOON : Math.round((fromHour + toHour) / 2);
  if (jobs === 0) return { noon: usual, dayEnd: toHour };
  // A rate for every part, and a place for every cut.
  const cost = (pieces: number, deviance: number): number => deviance + (2 * pieces - 1) * Math.log(jobs);
  const [best] = piecewiseRates(counts, 1, MOST_PARTS).sort(
    (a, b) => cost(a.pieces.length, a.deviance) - cost(b.pieces.length, b.deviance),
  );
  const cuts = (best?.pieces ?? []).slice(1).map(({ from }) => fromHour + from);
  return {
    noon: cuts.find((hour) => hour < LATE) ?? usual,
    dayEnd: cuts.findLast((hour) => hour >= LATE && hour > usual) ?? toHour,
  };
}
