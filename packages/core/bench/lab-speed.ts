import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { createSimulator, type Simulator } from '../src/simulate.ts';
import { median } from './agreement.ts';
import { benchLab, queueLab } from './bench-lab.ts';
import { settingsFor } from './lab-model.ts';

/** Processor seconds that some work takes. */
export function secondsOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const used = process.cpuUsage(before);
  return (used.user + used.system) / 1e6;
}

/** Microseconds of processor time for one measured week of one replication, median of several rounds. */
export function microsecondsPerWeek(weeks: number, replications: number, rounds: number): number {
  const simulator = createSimulator(benchLab());
  playAll(simulator, weeks, replications);
  const times = Array.from({ length: rounds }, () =>
    secondsOf(() => playAll(simulator, weeks, replications)),
  );
  return (median(times) / replications / weeks) * 1e6;
}

/** Seconds for plans of the given lengths, measured in turns; medians. */
export function secondsByWeeks(lengths: readonly number[], replications: number, rounds: number): number[] {
  const simulator = createSimulator(benchLab());
  const times = lengths.map((): number[] => []);
  for (let round = 0; round <= rounds; round++) {
    lengths.forEach((weeks, position) => {
      const seconds = secondsOf(() => playAll(simulator, weeks, replications));
      // The first round is there for the compiler.
      if (round > 0) times[position].push(seconds);
    });
  }
  return times.map(median);
}

/** Microseconds of processor time for one job of M/M/1 through the whole lab model, median of several rounds. */
export function microsecondsPerJob(rounds: number): number {
  const simulator = createSimulator(queueLab());
  const times: number[] = [];
  for (let round = 0; round <= rounds; round++) {
    let jobs = 0;
    const seconds = secondsOf(() => {
      const history = simulator.simulate({ ...settingsFor(1000, 'queue', round), capWeeks: 52 });
      jobs = history.jobClasses.reduce((sum, entry) => sum + entry.leadTimes.length, 0);
    });
    if (round > 0) times.push((seconds / jobs) * 1e6);
  }
  return median(times);
}

/** Wall seconds for the same replications on one thread and on two, measured in turns; medians. */
export async function secondsOnThreads(replications: number, rounds: number): Promise<[number, number]> {
  const one = await startWorkers(1);
  const two = await startWorkers(2);
  const times: [number[], number[]] = [[], []];
  for (let round = 0; round <= rounds; round++) {
    for (const [position, workers] of [one, two].entries()) {
      const start = performance.now();
      await Promise.all(workers.map((worker) => playOn(worker, replications / workers.length)));
      if (round > 0) times[position].push((performance.now() - start) / 1000);
    }
  }
  await Promise.all([...one, ...two].map((worker) => worker.terminate()));
  return [median(times[0]), median(times[1])];
}

export function coresHere(): number {
  return availableParallelism();
}

function startWorkers(count: number): Promise<Worker[]> {
  return Promise.all(
    Array.from({ length: count }, async () => {
      const worker = new Worker(new URL('./lab-worker.js', import.meta.url));
      // The compiler has its share of work in every thread.
      await playOn(worker, 100);
      return worker;
    }),
  );
}

function playOn(worker: Worker, replications: number): Promise<void> {
  return new Promise((resolve, reject) => {
    worker.once('message', () => resolve());
    worker.once('error', reject);
    worker.postMessage(replications);
  });
}

function playAll(simulator: Simulator, weeks: number, replications: number): void {
  for (let replication = 0; replication < replications; replication++) {
    simulator.simulate(settingsFor(weeks, 'speed', replication));
  }
}
