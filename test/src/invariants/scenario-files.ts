import { readdirSync, readFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { fileURLToPath } from 'node:url';

const FOLDER = fileURLToPath(new URL('../../../scenarios', import.meta.url));

/** A scenario of the repository. */
export interface ScenarioFile {
  readonly name: string;
  readonly path: string;
  readonly text: string;
}

export const SCENARIO_FILES: readonly ScenarioFile[] = readdirSync(FOLDER)
  .filter((file) => extname(file) === '.yaml')
  .map((file) => ({
    name: basename(file, '.yaml'),
    path: `scenarios/${file}`,
    text: readFileSync(`${FOLDER}/${file}`, 'utf8'),
  }));
