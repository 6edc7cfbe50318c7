import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { recordOf } from './record.ts';
import { SUITES } from './suites/index.ts';
import { RepetitionWorkers } from './workers.ts';

// The long tests: dist/long/main.js FOLDER [SUITE …]. Plays every repetition of all suites, or of those that are named,
// and writes what came of it into one file for each suite. Fails when a number that was counted lies outside of its bounds.

const [folder = '.', ...names] = process.argv.slice(2);
const unknown = names.filter((name) => SUITES.every((suite) => suite.name !== name));
if (unknown.length > 0) {
  throw new Error(
    `There is no suite ${unknown.join(', ')}; there are ${SUITES.map(({ name }) => name).join(', ')}.`,
  );
}

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}

/** Prints a line at every twentieth of the way. */
function progress(repetitions: number): (done: number) => void {
  const started = performance.now();
  return (done) => {
    if (done % Math.ceil(repetitions / 20) !== 0) return;
    const seconds = (performance.now() - started) / 1000;
    const left = Math.round((seconds / done) * (repetitions - done));
    print(`   ${done} of ${repetitions} after ${Math.round(seconds)} s, about ${left} s left`);
  };
}

const workers = new RepetitionWorkers();
let isOutside = false;
mkdirSync(folder, { recursive: true });
for (const suite of SUITES) {
  if (names.length > 0 && !names.includes(suite.name)) continue;
  print(`${suite.name}: ${suite.title}`);
  const lines = await workers.playAll(suite, progress(suite.repetitions));
  writeFileSync(join(folder, `${suite.name}.csv`), recordOf(suite, lines));
  for (const { words, isWithin } of suite.verdicts(lines)) {
    print(`   ${words}`);
    if (!isWithin) isOutside = true;
  }
}
await workers.close();
if (isOutside) process.exitCode = 1;
