import { plainWords } from '../text/plain-words.ts';
import { type ColumnProfile, holdsDates, holdsNumbers } from './column-profile.ts';
import { JOB_WORDS, RUN_WORDS, WEAK_JOB_WORDS, wordsOf } from './column-words.ts';
import { JOB_COLUMNS, type JobColumn, type Places, RUN_COLUMNS, type RunColumn } from './columns.ts';

/** Columns that hold dates. */
const DATES: readonly string[] = ['asked', 'promised', 'finished', 'start', 'end'];
/** What a heading is worth that is one of the known ones, that is a weak one, or that has one in it. */
const EXACT = 100;
const WITHIN = 50;
const WEAK = 20;

interface Candidate<Column> {
  readonly column: Column;
  readonly position: number;
  readonly score: number;
  readonly by: 'heading' | 'content';
}

/**
 * Which column of a list of requests is what, from headings and from what stands below them.
 * @param taken positions that are known otherwise
 */
export function guessJobColumns(
  headings: readonly string[],
  profiles: readonly ColumnProfile[],
  taken: ReadonlySet<number>,
): Places<JobColumn> {
  const candidates = JOB_COLUMNS.flatMap((column) => [
    ...byHeading(column, JOB_WORDS[column], headings, profiles),
    ...weakly(column, WEAK_JOB_WORDS[column] ?? '', headings, profiles),
    ...byContent(column, profiles),
  ]);
  return assign(candidates, headings, taken);
}

/** The same for the record of a machine. */
export function guessRunColumns(
  headings: readonly string[],
  profiles: readonly ColumnProfile[],
  taken: ReadonlySet<number>,
): Places<RunColumn> {
  const candidates = RUN_COLUMNS.flatMap((column) =>
    byHeading(column, RUN_WORDS[column], headings, profiles),
  );
  return assign(candidates, headings, taken);
}

/** How many headings are known ones, to tell the header line from lines above it. */
export function knownHeadings(headings: readonly string[], kind: 'jobs' | 'runs'): number {
  const lists =
    kind === 'jobs'
      ? [...Object.values(JOB_WORDS), ...Object.values(WEAK_JOB_WORDS)]
      : Object.values(RUN_WORDS);
  const known = new Set(lists.flatMap(wordsOf));
  return headings.filter((heading) => known.has(plainWords(heading))).length;
}

function byHeading<Column extends string>(
  column: Column,
  list: string,
  headings: readonly string[],
  profiles: readonly ColumnProfile[],
): Candidate<Column>[] {
  const phrases = wordsOf(list);
  return headings.flatMap((heading, position) => {
    const plain = plainWords(heading);
    const profile = profiles[position];
    if (plain === '' || profile === undefined || !fits(column, profile)) return [];
    if (phrases.includes(plain)) return [{ column, position, score: EXACT, by: 'heading' as const }];
    const within = phrases.filter((phrase) => phrase.length > 2 && ` ${plain} `.includes(` ${phrase} `));
    if (within.length === 0) return [];
    const longest = Math.max(...within.map((phrase) => phrase.split(' ').length));
    const others = plain.split(' ').length - longest;
    const score = WITHIN + 5 * longest - 5 * others;
    return [{ column, position, score, by: 'heading' as const }];
  });
}

function weakly<Column extends string>(
  column: Column,
  list: string,
  headings: readonly string[],
  profiles: readonly ColumnProfile[],
): Candidate<Column>[] {
  return byHeading(column, list, headings, profiles)
    .filter(({ score }) => score === EXACT)
    .map((candidate) => ({ ...candidate, score: WEAK }));
}

/** Columns that are needed are guessed from what stands in them when no heading is known. */
function byContent(column: JobColumn, profiles: readonly ColumnProfile[]): Candidate<JobColumn>[] {
  return profiles.flatMap((profile, position): Candidate<JobColumn>[] => {
    const { rows, filled, different } = profile;
    if (column === 'asked' && holdsDates(profile) && filled >= 0.9 * rows) {
      return [{ column, position, score: 5, by: 'content' }];
    }
    const isName = !holdsDates(profile) && !holdsNumbers(profile) && profile.addresses === 0;
    if (column === 'part' && isName && filled >= 0.8 * rows && different > 1 && different <= rows / 3) {
      return [{ column, position, score: 3, by: 'content' }];
    }
    return [];
  });
}

/** Whether what stands in a column can be what its heading says. */
function fits(column: string, profile: ColumnProfile): boolean {
  const { filled, numbers, addresses } = profile;
  if (filled === 0) return true;
  if (DATES.includes(column)) return holdsDates(profile);
  if (column === 'quantity') return numbers >= 0.6 * filled && !holdsDates(profile);
  if (column === 'job' || column === 'requester') return !holdsDates(profile) || numbers === filled;
  if (holdsDates(profile)) return false;
  if (column === 'part' || column === 'process' || column === 'material') {
    return !holdsNumbers(profile) && addresses < 0.5 * filled;
  }
  return true;
}

/** The best candidates, each column and each position once; of two equally good ones the left one. */
function assign<Column extends string>(
  candidates: readonly Candidate<Column>[],
  headings: readonly string[],
  taken: ReadonlySet<number>,
): Places<Column> {
  const places: Partial<Record<Column, { position: number; heading: string; by: 'heading' | 'content' }>> =
    {};
  const used = new Set(taken);
  const sorted = [...candidates].sort((a, b) => b.score - a.score || a.position - b.position);
  for (const { column, position, by } of sorted) {
    if (places[column] !== undefined || used.has(position)) continue;
    places[column] = { position, heading: headings[position] ?? '', by };
    used.add(position);
  }
  return places;
}
