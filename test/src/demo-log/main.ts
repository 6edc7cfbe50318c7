import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { meshReader } from '@buildweek/cli/mesh-reader';
import { demoLog } from './demo-log.ts';

/** Writes the demo log into the folder of scenarios, which is named on the command line. */
const [folder = '.'] = process.argv.slice(2);
const made = demoLog(
  readFileSync(resolve(folder, 'demo.yaml'), 'utf8'),
  meshReader((path) => resolve(folder, path)),
);
for (const [name, text] of made) writeFileSync(resolve(folder, name), text);
