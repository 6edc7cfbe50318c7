import type { PartFacts, PromiseFacts } from '../facts/part-facts.ts';
import type { LearnedWords } from './learned-words.ts';
import { yamlText } from './yaml-text.ts';

/** As many numbers of pieces as a list may have and still be read. */
const MOST_VALUES = 20;

/** A key of a demand with its value and what was counted. */
interface DemandEntry {
  readonly key: string;
  readonly value: string;
  readonly source: string;
}

/** The section of the demand, with what was counted beside every value. */
export function demandLines(parts: readonly PartFacts[], learned: LearnedWords): string[] {
  return parts.flatMap((part) => {
    const jobs = learned.jobs.get(part.name);
    if (jobs === undefined) return [];
    return [
      `  ${yamlText(part.name)}:`,
      ...demandOf(part, learned).map(({ key, value, source }) => `    ${key}: ${value} # ${source}`),
    ];
  });
}

/** Keys and values of the demand of one part, with their comments. */
export function demandOf(part: PartFacts, learned: LearnedWords): DemandEntry[] {
  const entries: DemandEntry[] = [];
  const add = (key: string, value: string, source: string): void => {
    entries.push({ key, value, source });
  };
  const jobs = learned.jobs.get(part.name);
  if (jobs !== undefined) add('jobs', jobs.value, jobs.source);
  if (learned.when !== null) add('when', learned.when.value, learned.when.source);
  if (learned.growth !== null) add('growth', learned.growth.value, learned.growth.source);
  if (learned.weekVariation !== null) {
    add('varies from week to week', learned.weekVariation.value, learned.weekVariation.source);
  }
  const { quantities, promise, rushPromise, cancelled } = part;
  if (quantities.length > 0) {
    add('pieces', piecesText(quantities), `${quantities.length} jobs say so`);
  }
  if (promise !== null) add('promise', ...promiseText(promise));
  const rush = learned.rush.get(part.name);
  if (rush !== undefined && part.rush.rush > 0) {
    add('rush', rush.value, rush.source);
    if (rushPromise !== null) add('rush promise', ...promiseText(rushPromise));
  }
  if (cancelled > 0) {
    const share = Math.max(0.1, Math.round((1000 * cancelled) / part.jobs) / 10);
    add(
      'cancels',
      `${share} % after 1 to 48 h, usually 8`,
      `${cancelled} of ${part.jobs} jobs; when is not in the log`,
    );
  }
  return entries;
}

function promiseText({ workingDays, promised, alike }: PromiseFacts): [value: string, source: string] {
  const days = Math.max(1, workingDays);
  return [`${days} working day${days === 1 ? '' : 's'}`, `${alike} of ${promised} promises`];
}

/** Numbers of pieces that are equally likely: every one, or twenty quantiles of many. */
function piecesText(ascending: readonly number[]): string {
  const first = ascending[0] ?? 1;
  if (ascending.at(-1) === first) return String(first);
  const values =
    ascending.length <= MOST_VALUES
      ? ascending
      : Array.from(
          { length: MOST_VALUES },
          (_, index) => ascending[Math.floor(((index + 0.5) / MOST_VALUES) * ascending.length)] ?? first,
        );
  return `[${values.join(', ')}]`;
}
