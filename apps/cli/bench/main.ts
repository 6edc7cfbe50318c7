import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg } from 'node:os';
import type { ScenarioFile } from '../src/files/scenario-file.ts';
import { WorkerExecutor } from '../src/workers/worker-executor.ts';
import { gainsOfCommonNumbers } from './common-numbers.ts';
import { demo, observedDemo } from './demo-plans.ts';
import { fixedEffort } from './fixed-effort.ts';
import { PROMISE, type SearchEffort, searchOnce } from './search-effort.ts';

// The bench of searching and comparing: bench/dist/bench/main.js [--rounds N] [--record]. It fails when a ratio falls
// below half of the one recorded in bench/measured-gains.json. Replications are the same in every round and on every
// machine; only the seconds are not.

const GAINS = 'bench/measured-gains.json';
const SEARCH_AIM = 15;
const COMMON_AIM = 3;
const SECONDS_AIM = 60;
const isRecording = process.argv.includes('--record');
const rounds = process.argv.includes('--rounds')
  ? Number(process.argv[process.argv.indexOf('--rounds') + 1])
  : 1;
const recorded: Record<string, number> = JSON.parse(readFileSync(GAINS, 'utf8'));
const measured: Record<string, number> = {};
const failures: string[] = [];

function print(line = ''): void {
  process.stdout.write(`${line}\n`);
}

function thousands(value: number): string {
  return Math.round(value).toLocaleString('en-US');
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  const [lower = 0, upper = 0] = [sorted[sorted.length % 2 === 1 ? middle : middle - 1], sorted[middle]];
  return (lower + upper) / 2;
}

/** Notes a ratio and says how it stands to its aim and to what was recorded. */
function judged(key: string, ratio: number, aim: number | null = null): string {
  measured[key] = Math.round(ratio * 10) / 10;
  const floor = (recorded[key] ?? 0) / 2;
  if (ratio < floor) failures.push(`${key}: ${ratio.toFixed(1)} times is below ${floor.toFixed(1)}`);
  const kept = ratio >= floor ? 'kept' : 'BROKEN';
  const aimed = aim === null ? '' : `aim ${aim}: ${ratio >= aim ? 'reached' : 'missed'}; `;
  return `${ratio.toFixed(1)} times (${aimed}floor ${floor.toFixed(1)}: ${kept})`;
}

async function printSearch(file: ScenarioFile, executor: WorkerExecutor): Promise<void> {
  const efforts: SearchEffort[] = [];
  for (let round = 0; round < rounds; round++) efforts.push(await searchOnce(file, executor));
  const [effort] = efforts;
  if (effort === undefined) return;
  const { findings, replications, deciding } = effort;
  const ruledOut = findings.ruledOut.reduce((sum, { plans }) => sum + plans, 0);
  const wall = median(efforts.map(({ wallSeconds }) => wallSeconds));
  const processor = median(efforts.map(({ processorSeconds }) => processorSeconds));
  print(
    `How many of what in the demo: ${findings.plans} plans, ${ruledOut} ruled out beforehand, ${file.reading.targets.length} targets, errs in at most ${100 * PROMISE.alpha} % of uses, indifference ${100 * PROMISE.indifference} points`,
  );
  printEffort('the search', replications, `${thousands(deciding)} of them decide`, findings.chosen);
  const onTwoCores = processor / 2;
  print(
    `      ${wall.toFixed(1)} s by the clock, ${processor.toFixed(1)} s of processor time, ${onTwoCores.toFixed(1)} s for each of two cores ` +
      `(aim ${SECONDS_AIM}: ${onTwoCores <= SECONDS_AIM ? 'reached' : 'missed'})`,
  );
  const fixed = await fixedEffort(file, executor);
  const basis = `reckoned from ${thousands(fixed.played)} that were played`;
  printEffort('fixed sizes, every plan', fixed.everyPlan, basis, null);
  printEffort('fixed sizes, up to the answer', fixed.leanest, basis, fixed.chosen);
  print(`   fewer than with every plan: ${judged('search', fixed.everyPlan / replications, SEARCH_AIM)}`);
  print(`   fewer than up to the answer: ${judged('search up to the answer', fixed.leanest / replications)}`);
  print();
}

function printEffort(name: string, replications: number, words: string, finds: string | null): void {
  const found = finds === null ? '' : `; finds ${finds}`;
  print(`   ${name.padEnd(30)} ${thousands(replications).padStart(9)} replications, ${words}${found}`);
}

async function printCommonNumbers(file: ScenarioFile, executor: WorkerExecutor): Promise<void> {
  print('Common random numbers, today against …: (var A + var B) / var(A − B)');
  const gains = await gainsOfCommonNumbers(await observedDemo(file, executor));
  for (const { change, measure, gain, atMost } of gains) {
    const verdict = judged(`${change}, ${measure}`, gain, COMMON_AIM);
    const bound = gain < COMMON_AIM ? `; no correlation would give more than ${atMost.toFixed(1)}` : '';
    print(`   ${change.padEnd(42)} ${measure.padEnd(24)} ${verdict}${bound}`);
  }
  print();
}

print(
  `Node ${process.versions.node}, ${cpus()[0]?.model.trim()}, ${availableParallelism()} cores, load average ${loadavg()[0]?.toFixed(1)}`,
);
print(`Medians of ${rounds} rounds`);
print();
const file = demo();
const executor = new WorkerExecutor(availableParallelism());
await printCommonNumbers(file, executor);
await printSearch(file, executor);
await executor.close();
if (isRecording) writeFileSync(GAINS, `${JSON.stringify(measured, null, 2)}\n`);
for (const failure of failures) print(failure);
process.exitCode = failures.length > 0 ? 1 : 0;
