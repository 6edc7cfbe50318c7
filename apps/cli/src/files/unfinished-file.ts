import { appendFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { ObservationJournal } from '@buildweek/study';
import { badInput } from '../failure.ts';
import { reasonOf } from './read-file.ts';

interface Header {
  readonly format: 'buildweek unfinished work';
  readonly command: string;
  /** Of everything that what is observed depends on: program, scenario, settings, what is looked at. */
  readonly fingerprint: string;
}

interface Line {
  readonly plan: string;
  readonly replication: number;
  /** Null stands for Infinity, which JSON does not have. */
  readonly values: readonly (number | null)[];
}

/**
 * What a long command has played, on a file, line by line: after Ctrl-C, or a power cut, it goes on from there. The
 * file is there only while the work is unfinished.
 */
export class UnfinishedFile implements ObservationJournal {
  readonly path: string;
  /** Whether there is anything in it to go on with. */
  isWorthKeeping: boolean;
  private readonly kept: ReadonlyMap<string, ReadonlyMap<number, Float64Array>>;

  private constructor(path: string, kept: ReadonlyMap<string, ReadonlyMap<number, Float64Array>>) {
    this.path = path;
    this.kept = kept;
    this.isWorthKeeping = kept.size > 0;
  }

  /** Starts anew; what was kept of earlier unfinished work of this name is given up. @throws Failure for bad input */
  static start(path: string, command: string, fingerprint: string): UnfinishedFile {
    if (existsSync(path) && !isOurs(path)) {
      throw badInput(`${path} is there already and is not unfinished work of this program. Move it away.`);
    }
    const header: Header = { format: 'buildweek unfinished work', command, fingerprint };
    written(path, () => {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, `${JSON.stringify(header)}\n`);
    });
    return new UnfinishedFile(path, new Map());
  }

  /** Goes on. @throws Failure for bad input when there is nothing to go on with, or it belongs to something else */
  static goOn(path: string, command: string, fingerprint: string): UnfinishedFile {
    if (!existsSync(path)) {
      throw badInput(`There is no unfinished work in ${path}. Leave out --resume to begin.`);
    }
    const [first = '', ...lines] = linesOf(path);
    const header = parse<Header>(first);
    if (header?.format !== 'buildweek unfinished work') {
      throw badInput(`${path} is no unfinished work of this program. Leave out --resume to begin anew.`);
    }
    if (header.command !== command || header.fingerprint !== fingerprint) {
      throw badInput(
        `${path} was left by another command, scenario, setting or version of the program, so its replications cannot be used. Give what was given then, or leave out --resume to begin anew.`,
      );
    }
    const kept = new Map<string, Map<number, Float64Array>>();
    for (const text of lines) {
      // The last line may be cut off where the power was.
      const line = parse<Line>(text);
      if (line === null) continue;
      const plan = kept.get(line.plan) ?? new Map<number, Float64Array>();
      kept.set(line.plan, plan);
      plan.set(
        line.replication,
        Float64Array.from(line.values, (value) => value ?? Number.POSITIVE_INFINITY),
      );
    }
    // A cut line must not run into the next one.
    written(path, () => appendFileSync(path, '\n'));
    return new UnfinishedFile(path, kept);
  }

  read(plan: string, replication: number): Float64Array | null {
    return this.kept.get(plan)?.get(replication) ?? null;
  }

  /** @throws Failure for bad input when the file cannot be written any more */
  write(plan: string, replication: number, observation: Float64Array): void {
    this.isWorthKeeping = true;
    const values = Array.from(observation, (value) => (Number.isFinite(value) ? value : null));
    const line: Line = { plan, replication, values };
    written(this.path, () => appendFileSync(this.path, `${JSON.stringify(line)}\n`));
  }

  /** The work is done, or was never begun. */
  remove(): void {
    rmSync(this.path, { force: true });
  }
}

function isOurs(path: string): boolean {
  return parse<Header>(linesOf(path)[0] ?? '')?.format === 'buildweek unfinished work';
}

/** @throws Failure for bad input when it cannot be read */
function linesOf(path: string): string[] {
  try {
    return readFileSync(path, 'utf8').split('\n');
  } catch (error) {
    throw badInput(`Cannot read ${path}, where unfinished work is kept: ${reasonOf(error)}.`);
  }
}

/** @throws Failure for bad input when it cannot be written */
function written(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    throw badInput(
      `Cannot write ${path}, where unfinished work is kept: ${reasonOf(error)}. Work in a folder that can be written, or name a file in one: --json FILE`,
    );
  }
}

function parse<T>(text: string): T | null {
  try {
    return JSON.parse(text) as T;
  } catch {
    return null;
  }
}
