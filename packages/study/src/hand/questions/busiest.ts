import type { Lab } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import { handLoads } from '../sure-loads.ts';

/** Load from which on waiting grows fast. Common practice, no source. */
export const COMFORTABLE_LOAD = 0.85;

/**
 * What is asked for most of its hours, by hand; null in a lab that has nothing.
 * @param weeks over which demand and working hours are averaged
 */
export function busiest(lab: Lab, weeks: number): HandLoad | null {
  const { all } = handLoads(lab, { fromWeek: 0, weeks });
  return all.reduce<HandLoad | null>(
    (most, one) => (most === null || one.load > most.load ? one : most),
    null,
  );
}

/** `85 %` of a load. */
export function loadWords(load: number): string {
  return `${Math.round(100 * load)} %`;
}
