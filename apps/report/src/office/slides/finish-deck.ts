import { sameZip, zipPaths } from '../zip/same-zip.ts';
import type { Deck } from './deck.ts';
import { withErrorBars } from './error-bars.ts';

/** Names with the running number that the writing library gives to charts and their workbooks over its whole life. */
const NUMBERED = /(charts\/chart|charts\/_rels\/chart|Microsoft_Excel_Worksheet)(\d+)(\.xml|\.xlsx)/g;

/**
 * The file of a set of slides: charts numbered from 1, with their intervals, nothing in it that differs from one making
 * to the next.
 */
export async function finishDeck({ file, intervals }: Deck): Promise<Uint8Array> {
  const written = await file.write({ outputType: 'uint8array', compression: false });
  if (!(written instanceof Uint8Array)) throw new Error('The slides were not written as bytes.');
  const numbers = zipPaths(written).flatMap((path) =>
    [...path.matchAll(NUMBERED)].map((match) => Number(match[2])),
  );
  const before = numbers.length === 0 ? 0 : Math.min(...numbers) - 1;
  const renamed = (text: string): string =>
    text.replace(
      NUMBERED,
      (_, start: string, number: string, end: string) => `${start}${Number(number) - before}${end}`,
    );
  return sameZip(written, {
    application: 'buildweek slides',
    path: renamed,
    text: (path, text) => {
      const number = /^ppt\/charts\/chart(\d+)\.xml$/.exec(path)?.[1];
      const bars = number === undefined ? null : (intervals[Number(number) - 1] ?? null);
      return bars === null ? renamed(text) : withErrorBars(renamed(text), bars);
    },
  });
}
