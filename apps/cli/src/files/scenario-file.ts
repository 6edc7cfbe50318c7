import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import {
  ChangeError,
  type ChangeWording,
  changeScenario,
  type FileResolver,
  formatProblem,
  readChanges,
  readScenario,
  type ScenarioReading,
} from '@buildweek/scenario';
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
 *
 * @param changes what is changed in it, in its own words
 * @throws Failure for bad input with everything that is wrong with the file, or with the changes
 */
export function readScenarioFile(path: string, changes: readonly string[] = []): ScenarioFile {
  const file = readScenarioText(readText(path, 'scenario'), path, '');
  return changes.length === 0 ? file : readChangedScenario(file, path, changes.join('; '));
}

/**
 * The same scenario with changes in its own words.
 * @throws Failure for bad input when a change cannot be made, or what comes of it is no scenario
 */
export function readChangedScenario(
  { text }: ScenarioFile,
  path: string,
  changes: string | readonly ChangeWording[],
): ScenarioFile {
  try {
    const wordings = typeof changes === 'string' ? readChanges(changes) : changes;
    const words = wordings.map(({ wording }) => wording).join('; ');
    return readScenarioText(changeScenario(text, wordings), path, ` with “${words}”`);
  } catch (error) {
    if (!(error instanceof ChangeError)) throw error;
    throw badInput(`${error.message}\n  write:    ${error.write}`);
  }
}

/**
 * What comes of a text that differs from its file; nothing is thrown for what is wrong with it.
 * @param changed what it differs in, for messages; or nothing
 */
export function readingOf(text: string, path: string, changed: string): ScenarioReading {
  const folder = path === '-' ? '.' : dirname(path);
  const place = (name: string): string => resolve(folder, name);
  return readScenario(text, nameOf(path, changed), fileResolver(folder), meshReader(place));
}

function nameOf(path: string, changed: string): string {
  return `${path === '-' ? 'standard input' : path}${changed}`;
}

/** @param changed what the text differs in from the file, for messages; or nothing */
function readScenarioText(text: string, path: string, changed: string): ScenarioFile {
  const name = nameOf(path, changed);
  const reading = readingOf(text, path, changed);
  if (reading.kind === 'scenario') return { text, reading };
  const { problems } = reading;
  const errors = problems.filter((problem) => problem.severity === 'error').length;
  const count = errors === 1 ? 'There is 1 error' : `There are ${errors} errors`;
  throw badInput([...problems.map(formatProblem), `${count} in ${name}; nothing was done.`].join('\n\n'));
}
