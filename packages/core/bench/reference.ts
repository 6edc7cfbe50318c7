import { execFileSync } from 'node:child_process';
import type { Workload, WorkloadRun } from './workload.ts';

/** SimPy's Debian package belongs to the system's own Python. */
const PYTHON = '/usr/bin/python3';
const FOLDER = '../../test/reference';

export const HOW_TO_INSTALL = 'SimPy is missing: apt-get install python3-simpy3';

/** Versions of SimPy and Python, as text; null when SimPy cannot be imported. */
export function referenceVersions(): string | null {
  const script =
    'import simpy, platform; print("SimPy", simpy.__version__, "on Python", platform.python_version())';
  try {
    return execFileSync(PYTHON, ['-c', script], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim();
  } catch {
    return null;
  }
}

/** Plays a workload in SimPy, in a process of its own. */
export function playReference(workload: Workload, seed: string): WorkloadRun {
  return run(PYTHON, ['-B', `${FOLDER}/${workload.reference}`, ...workload.sizes.map(String), seed]);
}

/** Plays a workload here, in a process of its own. */
export function playHere(workload: Workload, seed: string): WorkloadRun {
  return run(process.execPath, [
    'bench/dist/bench/play.js',
    workload.key,
    ...workload.sizes.map(String),
    seed,
  ]);
}

function run(command: string, commandArguments: readonly string[]): WorkloadRun {
  return JSON.parse(execFileSync(command, commandArguments, { encoding: 'utf8', maxBuffer: 2 ** 26 }));
}
