import { plainWords } from '../text/plain-words.ts';
import { type ColumnProfile, holdsDates } from './column-profile.ts';
import { END_WORDS, FILLER_WORDS, START_WORDS, WORK_WORDS, wordsOf } from './column-words.ts';
import type { ColumnPlace, StagePlaces } from './columns.ts';

const STARTS = new Set(wordsOf(START_WORDS));
const ENDS = new Set(wordsOf(END_WORDS));
const WORKS = new Set(wordsOf(WORK_WORDS));
const SAYING_NOTHING = [STARTS, ENDS, WORKS, new Set(wordsOf(FILLER_WORDS))];

/**
 * Columns of dates that are nothing else are times of stages: `print start` and `print end` belong together, a lone
 * `printed` is when a stage was left. They are clicks, unless the headings speak of work.
 *
 * @param taken positions that are known otherwise
 */
export function guessStages(
  headings: readonly string[],
  profiles: readonly ColumnProfile[],
  taken: ReadonlySet<number>,
): StagePlaces[] {
  const stages = new Map<string, { start: ColumnPlace | null; end: ColumnPlace | null; isWork: boolean }>();
  headings.forEach((heading, position) => {
    const profile = profiles[position];
    if (taken.has(position) || profile === undefined || !holdsDates(profile)) return;
    const { name, side, isWork } = stageOf(heading);
    const stage = stages.get(name) ?? { start: null, end: null, isWork: false };
    if (stage[side] !== null) return;
    stage[side] = { position, heading, by: 'heading' };
    stage.isWork ||= isWork;
    stages.set(name, stage);
  });
  return [...stages].map(([name, { start, end, isWork }]) => ({
    name,
    start,
    end,
    isWork: isWork && start !== null && end !== null,
  }));
}

function stageOf(heading: string): { name: string; side: 'start' | 'end'; isWork: boolean } {
  const written = heading.split(/[\s_/-]+/).filter((word) => plainWords(word) !== '');
  const words = written.map(plainWords);
  const last = words[words.length - 1] ?? '';
  const first = words[0] ?? '';
  const isStart = STARTS.has(last) || (STARTS.has(first) && !ENDS.has(last));
  const rest = written.filter((_, index) => SAYING_NOTHING.every((set) => !set.has(words[index] ?? '')));
  const name =
    rest.length === 0 ? (words.find((word) => WORKS.has(word)) ?? 'work') : rest.join(' ').toLowerCase();
  return { name, side: isStart ? 'start' : 'end', isWork: words.some((word) => WORKS.has(word)) };
}
