import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { formatProblem, readScenario, type ScenarioReading } from '@buildweek/scenario';
import { badInput } from '../failure.ts';
import { readText } from './read-file.ts';

/** A scenario that can be played, with its text. */
export interface ScenarioFile {
  readonly text: string;
  readonly reading: Extract<ScenarioReading, { kind: 'scenario' }>;
}

/**
 * Reads a scenario file; files that it names are looked for beside it.
 * @throws Failure for bad input with everything that is wrong with the file
 */
export function readScenarioFile(path: string): ScenarioFile {
  const text = readText(path, 'scenario');
  const folder = path === '-' ? '.' : dirname(path);
  const reading = readScenario(text, path === '-' ? 'standard input' : path, (name) => {
    const place = resolve(folder, name);
    return statSync(place, { throwIfNoEntry: false })?.isFile() ? readFileSync(place, 'utf8') : null;
  });
  if (reading.kind === 'scenario') return { text, reading };
  const { problems } = reading;
  const errors = problems.filter((problem) => problem.severity === 'error').length;
  const count = errors === 1 ? 'There is 1 error' : `There are ${errors} errors`;
  throw badInput([...problems.map(formatProblem), `${count} in ${path}; nothing was done.`].join('\n\n'));
}
