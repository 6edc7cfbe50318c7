import { plainWords } from '../text/plain-words.ts';

/** First letters of the months in English, German, French, Spanish, Portuguese and Italian. */
const MONTHS: readonly (readonly string[])[] = [
  ['jan', 'janv', 'ene', 'gen'],
  ['feb', 'fev', 'fevr'],
  ['mar', 'mrz', 'maer', 'marz'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mayo', 'maio', 'mag'],
  ['jun', 'juin', 'giu'],
  ['jul', 'juil', 'lug'],
  ['aug', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'out', 'ott'],
  ['nov'],
  ['dec', 'dez', 'dic'],
];

/** The month of a name or its abbreviation, from 1; null when it is none. */
export function monthNamed(name: string): number | null {
  const plain = plainWords(name);
  if (plain.length < 3) return null;
  const index = MONTHS.findIndex((starts) => starts.some((start) => plain.startsWith(start)));
  return index < 0 ? null : index + 1;
}
