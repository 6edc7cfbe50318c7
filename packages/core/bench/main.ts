import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import type { Lab } from '@buildweek/model';
import { agree, distance, estimate, HALF_WIDTH, type MeanEstimate, median } from './agreement.ts';
import { benchLab } from './bench-lab.ts';
import { demoLab } from './demo-lab.ts';
import {
  compareLabs,
  microsecondsPerJob,
  microsecondsPerWeek,
  secondsByWeeks,
  timesOnThreads,
} from './lab-speed.ts';
import { HOW_TO_INSTALL, playHere, playReference, referenceVersions } from './reference.ts';
import { typedTwin } from './typed-twin.ts';
import { WORKLOADS, type Workload, type WorkloadRun } from './workload.ts';

// The bench: bench/dist/bench/main.js [--rounds N] [--record]. Without SimPy it prints its own figures only.
// It fails when a ratio to SimPy falls below half of the one recorded in bench/measured-ratios.json, or when
// the two disagree about an answer.

const RATIOS = 'bench/measured-ratios.json';
const isRecording = process.argv.includes('--record');
const rounds = process.argv.includes('--rounds')
  ? Number(process.argv[process.argv.indexOf('--rounds') + 1])
  : 3;
const failures: string[] = [];

function print(line = ''): void {
  process.stdout.write(`${line}\n`);
}

function thousands(value: number): string {
  return Math.round(value).toLocaleString('en-US');
}

function interval({ mean, standardError }: MeanEstimate): string {
  return `${mean.toFixed(3)} ± ${(HALF_WIDTH * standardError).toFixed(3)}`;
}

function pooled(runs: readonly WorkloadRun[], answer: string): MeanEstimate {
  return estimate(runs.flatMap((run) => run.answers[answer] ?? []));
}

function printSpeed(name: string, workload: Workload, runs: readonly WorkloadRun[]): number {
  const seconds = median(runs.map((run) => run.seconds));
  const events = median(runs.map((run) => run.events / run.seconds));
  print(
    `   ${name.padEnd(10)} ${seconds.toFixed(3).padStart(8)} s   ${thousands(events).padStart(12)} events/s   ` +
      `${((seconds / workload.units) * 1e6).toFixed(3).padStart(10)} µs for each of ${thousands(workload.units)} ${workload.unit}`,
  );
  return seconds;
}

function compareAnswers(
  workload: Workload,
  here: readonly WorkloadRun[],
  there: readonly WorkloadRun[],
): void {
  const judge = (answer: string, own: MeanEstimate, otherName: string, other: MeanEstimate): void => {
    const isEqual = agree(own, other);
    if (!isEqual) failures.push(`${workload.title}: ${answer} differs from ${otherName}`);
    print(
      `   ${answer.padEnd(24)} ${interval(own).padEnd(20)} ${otherName} ${interval(other).padEnd(20)} ` +
        `${distance(own, other).toFixed(2)} standard errors apart: ${isEqual ? 'equal' : 'NOT EQUAL'}`,
    );
  };
  for (const answer of Object.keys(here[0]?.answers ?? {})) {
    const own = pooled(here, answer);
    if (there.length > 0) judge(answer, own, 'SimPy', pooled(there, answer));
    const known = workload.theory[answer];
    if (known !== undefined) judge(answer, own, 'theory', { mean: known, standardError: 0 });
  }
}

function playWorkload(workload: Workload, hasReference: boolean, recorded: Record<string, number>): number {
  const here: WorkloadRun[] = [];
  const there: WorkloadRun[] = [];
  for (let round = 1; round <= rounds; round++) {
    here.push(playHere(workload, `round ${round}`));
    if (hasReference) there.push(playReference(workload, `round ${round}`));
  }
  print(workload.title);
  const own = printSpeed('buildweek', workload, here);
  const other = hasReference ? printSpeed('SimPy', workload, there) : Number.NaN;
  compareAnswers(workload, here, there);
  const ratio = other / own;
  if (hasReference) {
    const floor = (recorded[workload.key] ?? 0) / 2;
    const verdict = ratio >= floor ? 'kept' : 'BROKEN';
    if (ratio < floor)
      failures.push(`${workload.title}: ${ratio.toFixed(1)} times is below ${floor.toFixed(1)}`);
    print(
      `   ${ratio.toFixed(1)} times as fast as SimPy (aim ${workload.aim}: ${ratio >= workload.aim ? 'reached' : 'missed'}; ` +
        `floor ${floor.toFixed(1)}: ${verdict})`,
    );
  }
  print();
  return ratio;
}

async function printThreads(lab: Lab): Promise<void> {
  const { wall, processor } = await timesOnThreads(lab, 600, rounds);
  print(
    `600 replications of 13 weeks of the demo: ${wall[0].toFixed(2)} s on one thread, ${wall[1].toFixed(2)} s on two: ` +
      `${(wall[0] / wall[1]).toFixed(2)} times (wall time; ${cpus().length} cores, load average ${loadavg()[0]?.toFixed(1)})`,
  );
  print(`Two threads take ${(processor[1] / processor[0]).toFixed(2)} times the processor time of one`);
}

/** Packing may make a lab slower by half at most. */
const MOST_FOR_PACKING = 1.5;

function printPacking(lab: Lab): void {
  const [packed, typed] = compareLabs([lab, typedTwin(lab)], 100, 2 * rounds);
  const ratio = packed / typed;
  const verdict = ratio <= MOST_FOR_PACKING ? 'kept' : 'BROKEN';
  if (ratio > MOST_FOR_PACKING) failures.push(`Packing makes the demo ${ratio.toFixed(2)} times as slow`);
  print(
    `The demo with packed builds ${packed.toFixed(0)} µs a week, with typed numbers ${typed.toFixed(0)} µs: ` +
      `${ratio.toFixed(2)} times (at most ${MOST_FOR_PACKING}: ${verdict})`,
  );
}

function printLabSpeed(title: string, lab: Lab): void {
  print(title);
  const week = microsecondsPerWeek(lab, 13, 100, rounds);
  print(
    `   ${week.toFixed(0)} µs for each measured week of a replication; ${thousands(1e6 / week)} such weeks a second`,
  );
  const [shorter = 0, longer = 0] = secondsByWeeks(lab, [52, 104], 25, rounds);
  print(`   104 weeks take ${(longer / shorter).toFixed(2)} times as long as 52`);
  print();
}

const versions = referenceVersions();
const recorded: Record<string, number> = JSON.parse(readFileSync(RATIOS, 'utf8'));
print(
  `Node ${process.versions.node} (V8 ${process.versions.v8}), ${cpus()[0]?.model.trim()}, ${cpus().length} cores`,
);
print(versions ?? HOW_TO_INSTALL);
print(
  `Processor seconds, medians of ${rounds} rounds in turns, each after three tenths to warm up; intervals are 95 %`,
);
print();
const ratios = Object.fromEntries(
  WORKLOADS.map((workload) => [workload.key, playWorkload(workload, versions !== null, recorded)]),
);
const demo = demoLab();
printLabSpeed('Lab model alone: the demo', demo);
printLabSpeed('Lab model alone: the lab of D', benchLab());
printPacking(demo);
await printThreads(demo);
print(`${microsecondsPerJob(rounds).toFixed(2)} µs for each job of M/M/1 through the lab model`);
print(`Peak memory of this process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`);
if (isRecording && versions !== null) {
  const rounded = Object.entries(ratios).map(([key, ratio]) => [key, Math.round(ratio * 10) / 10]);
  writeFileSync(RATIOS, `${JSON.stringify(Object.fromEntries(rounded), null, 2)}\n`);
}
for (const failure of failures) print(failure);
process.exitCode = failures.length > 0 ? 1 : 0;
