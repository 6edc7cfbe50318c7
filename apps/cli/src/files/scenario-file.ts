import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { type FileResolver, formatProblem, readScenario, type ScenarioReading } from '@buildweek/scenario';
import { badInput } from '../failure.ts';
import { meshReader } from './mesh-reader.ts';
import { readText } from './read-file.ts';

/** A scenario that can be played, with its text. */
export interface ScenarioFile {
  readonly text: string;
  readonly reading: Extract<ScenarioReading, { kind: 'scenario' }>;
}

/** The text of files that a scenario in a folder names. */
export function fileResolver(folder: string): FileResolver {
  return (name) => {
    const place = resolve(folder, name);
    return statSync(place, { throwIfNoEntry: false })?.isFile() ? readFileSync(place, 'utf8') : null;
  };
}

/**
 * Reads a scenario file; files that it names are looked for beside it.
 * @throws Failure for bad input with everything that is wrong with the file
 */
export function readScenarioFile(path: string): ScenarioFile {
  const text = readText(path, 'scenario');
  const folder = path === '-' ? '.' : dirname(path);
  const place = (name: string): string => resolve(folder, name);
  const name = path === '-' ? 'standard input' : path;
  const reading = readScenario(text, name, fileResolver(folder), meshReader(place));
  if (reading.kind === 'scenario') return { text, reading };
  const { problems } = reading;
  const errors = problems.filter((problem) => problem.severity === 'error').length;
  const count = errors === 1 ? 'There is 1 error' : `There are ${errors} errors`;
  throw badInput([...problems.map(formatProblem), `${count} in ${path}; nothing was done.`].join('\n\n'));
}
