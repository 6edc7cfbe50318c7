import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

const require = createRequire(import.meta.url);
const APP = dirname(require.resolve('@buildweek/cli/package.json'));
const COMMAND = join(APP, 'bin/buildweek.js');

/** The repository. */
export const ROOT = resolve(APP, '../..');

export interface Ended {
  readonly exitCode: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built command as a process of its own and waits for its end. */
export async function buildweek(arguments_: readonly string[], input = ''): Promise<Ended> {
  return startBuildweek(arguments_, input).ended;
}

/** Starts the built command; `said` resolves when it has first written to standard error. */
export function startBuildweek(
  arguments_: readonly string[],
  input = '',
): { readonly child: ChildProcess; readonly said: Promise<void>; readonly ended: Promise<Ended> } {
  const child = spawn(process.execPath, [COMMAND, ...arguments_], { cwd: ROOT });
  let stdout = '';
  let stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  const said = new Promise<void>((resolve) => {
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
      resolve();
    });
  });
  child.stdin.end(input);
  const ended = new Promise<Ended>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (exitCode) => resolve({ exitCode, stdout, stderr }));
  });
  return { child, said, ended };
}

/** A folder of its own for a test, with a way to put files into it. */
export class Folder {
  private readonly path = mkdtempSync(join(tmpdir(), 'buildweek-'));

  file(name: string): string {
    return join(this.path, name);
  }

  write(name: string, text: string): string {
    const path = this.file(name);
    writeFileSync(path, text);
    return path;
  }

  get root(): string {
    return this.path;
  }

  remove(): void {
    rmSync(this.path, { recursive: true });
  }
}

/** A plain queue that plays in no time: one server, day and night. */
export function queueScenario(more = '', jobsPerWeek = 100): string {
  return `buildweek: 1
name: One server
simulate: { weeks: 1, ignored weeks: 0, replications: 20, seed: queue }
${more}
stations:
  server: { holds: 1 job }
routes:
  visit:
    - service: { on: server, takes: exponential mean 1 h per job }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: ${jobsPerWeek} per week, when: any time }
`;
}
