import { execFileSync } from 'node:child_process';
import type { Lab } from '@buildweek/model';

/** From the repository's root, where the command line can be found: this package knows neither scenarios nor meshes. */
const ROOT = '../..';
const SCRIPT = `
  import { readScenarioFile } from './apps/cli/dist/files/scenario-file.js';
  process.stdout.write(JSON.stringify(readScenarioFile('scenarios/demo.yaml').reading.lab));
`;

/** The lab of `scenarios/demo.yaml`. */
export function demoLab(): Lab {
  const text = execFileSync(process.execPath, ['--input-type=module', '-e', SCRIPT], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  return JSON.parse(text);
}
