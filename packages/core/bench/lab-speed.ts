import { Worker } from 'node:worker_threads';
import type { Lab } from '@buildweek/model';
import { createSimulator, type Simulator } from '../src/simulate.ts';
import { median } from './agreement.ts';
import { queueLab } from './bench-lab.ts';
import { settingsFor } from './lab-model.ts';

const WEEKS = 13;

/** Processor seconds that some work takes. */
function secondsOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const used = process.cpuUsage(before);
  return (used.user + used.system) / 1e6;
}

/** Microseconds of processor time for one measured week of one replication, median of several rounds. */
export function microsecondsPerWeek(lab: Lab, weeks: number, replications: number, rounds: number): number {
  const simulator = createSimulator(lab);
  playAll(simulator, weeks, replications);
  const times = Array.from({ length: rounds }, () =>
    secondsOf(() => playAll(simulator, weeks, replications)),
  );
  return (median(times) / replications / weeks) * 1e6;
}

/** Microseconds of processor time for one measured week of each of two labs, measured in turns; medians. */
export function compareLabs(
  labs: readonly [Lab, Lab],
  replications: number,
  rounds: number,
): [number, number] {
  const simulators = labs.map(createSimulator);
  const times: [number[], number[]] = [[], []];
  for (let round = 0; round <= rounds; round++) {
    simulators.forEach((simulator, position) => {
      const seconds = secondsOf(() => playAll(simulator, WEEKS, replications));
      // The first round is there for the compiler.
      if (round > 0) times[position].push((seconds / replications / WEEKS) * 1e6);
    });
  }
  return [median(times[0]), median(times[1])];
}

/** Seconds for plans of the given lengths, measured in turns; medians. */
export function secondsByWeeks(
  lab: Lab,
  lengths: readonly number[],
  replications: number,
  rounds: number,
): number[] {
  const simulator = createSimulator(lab);
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

/** How long the same replications take on one thread and on two. */
export interface ThreadTimes {
  /** Wall seconds, medians: what a free machine gains. */
  readonly wall: readonly [number, number];
  /** Processor seconds of all threads, medians: what two threads cost each other, on a busy machine too. */
  readonly processor: readonly [number, number];
}

/** Plays the same replications on one thread and on two, in turns. */
export async function timesOnThreads(lab: Lab, replications: number, rounds: number): Promise<ThreadTimes> {
  const pools = [await startWorkers(lab, 1), await startWorkers(lab, 2)];
  const wall: [number[], number[]] = [[], []];
  const processor: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round++) {
    for (const [position, workers] of pools.entries()) {
      const start = performance.now();
      const before = process.cpuUsage();
      await Promise.all(workers.map((worker) => playOn(worker, replications / workers.length)));
      const used = process.cpuUsage(before);
      wall[position].push((performance.now() - start) / 1000);
      processor[position].push((used.user + used.system) / 1e6);
    }
  }
  await Promise.all(pools.flat().map((worker) => worker.terminate()));
  return {
    wall: [median(wall[0]), median(wall[1])],
    processor: [median(processor[0]), median(processor[1])],
  };
}

function startWorkers(lab: Lab, count: number): Promise<Worker[]> {
  return Promise.all(
    Array.from({ length: count }, async () => {
      const worker = new Worker(new URL('./lab-worker.js', import.meta.url), { workerData: lab });
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
