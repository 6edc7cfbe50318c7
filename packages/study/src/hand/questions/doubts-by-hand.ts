import type { Doubt, Lab } from '@buildweek/model';
import { applyDoubt } from '../../doubts/changes/apply-doubt.ts';
import { percentOf } from '../../words/figures.ts';
import { busiest, loadWords } from './busiest.ts';

/** Loads that differ by less are the same in words. */
const SAME = 0.005;

/**
 * What a page of arithmetic says of doubts: which of them moves the highest load, and which it cannot see.
 * @param weeks over which demand and working hours are averaged
 */
export function doubtsByHand(lab: Lab, doubts: readonly Doubt[], weeks: number): string[] {
  const stated = busiest(lab, weeks);
  if (stated === null) return [];
  const ends = doubts.map((doubt) => ({
    doubt,
    low: loadAt(lab, doubt, doubt.low, weeks),
    high: loadAt(lab, doubt, doubt.high, weeks),
  }));
  const reach = ({ low, high }: (typeof ends)[number]): number => Math.abs(high - low);
  const [most] = [...ends].sort((one, other) => reach(other) - reach(one));
  const unseen = ends.filter((one) => reach(one) < SAME).map(({ doubt }) => `“${doubt.name}”`);
  const first = `By loads alone “${stated.name}” would be the busiest, with ${loadWords(stated.load)} of the hours there.`;
  if (most === undefined || reach(most) < SAME) return [`${first} None of the doubts moves that.`];
  const { doubt, low, high } = most;
  return [
    `${first} “${doubt.name}” moves the highest load most: ${loadWords(low)} at ${percentOf(doubt.low)} % of what is stated, ${loadWords(high)} at ${percentOf(doubt.high)} %.`,
    ...(unseen.length === 0
      ? []
      : [
          `${unseen.join(', ')} ${unseen.length === 1 ? 'does' : 'do'} not move the highest load: what ${unseen.length === 1 ? 'it does' : 'they do'} to waiting and promises only playing shows.`,
        ]),
  ];
}

function loadAt(lab: Lab, { about }: Doubt, factor: number, weeks: number): number {
  return busiest(applyDoubt(lab, about, factor), weeks)?.load ?? 0;
}
