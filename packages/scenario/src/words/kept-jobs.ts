import { wholeNumber } from './numbers.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** `4 jobs`: how many are in the lab at any time. @throws WordingError */
export const keptJobs: Wording<number> = (text) => {
  const expected = 'how many jobs are in the lab at any time';
  const parts = /^(\S+)\s+jobs?$/i.exec(text);
  if (parts !== null) return wholeNumber(1, '4')(parts[1] ?? '');
  const write = /^\d+$/.test(text) ? `${text} jobs` : '4 jobs';
  throw new WordingError(`"${text}" does not say how many jobs.`, expected, write);
};
