import { execFileSync } from 'node:child_process';
import type { Lab } from '@buildweek/model';

/** From the repository's root, where the scenario package can be found by its name: this package does not know it. */
const ROOT = '../..';
const SCRIPT = `
  import { readFileSync } from 'node:fs';
  import { readScenario } from '@buildweek/scenario';
  const reading = readScenario(readFileSync('scenarios/demo.yaml', 'utf8'), 'demo.yaml');
  if (reading.kind === 'problems') throw new Error(JSON.stringify(reading.problems));
  process.stdout.write(JSON.stringify(reading.lab));
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
