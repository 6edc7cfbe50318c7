import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { badInput } from '../failure.ts';
import { reasonOf } from './read-file.ts';

/** A kind of file that a command writes, and how it is known again. */
export interface OutputKind {
  readonly name: string;
  /** Stands near the start of every such file. */
  readonly mark: RegExp;
  /** Whether it may stand anywhere in the file instead. */
  readonly inAll?: boolean;
}

export const RESULTS_FILE: OutputKind = { name: 'results', mark: /^\s*\{\s*"format":\s*"buildweek results"/ };
export const PART_FILE: OutputKind = {
  name: 'the answer for a part',
  mark: /^\s*\{\s*"format":\s*"buildweek part"/,
};
export const CALIBRATION_FILE: OutputKind = {
  name: 'the answer of a calibration',
  mark: /^\s*\{\s*"format":\s*"buildweek calibration"/,
};
export const COMPARISON_FILE: OutputKind = {
  name: 'a comparison',
  mark: /^\s*\{\s*"format":\s*"buildweek comparison"/,
};
export const PLAN_FILE: OutputKind = {
  name: 'the answer of a search for a plan',
  mark: /^\s*\{\s*"format":\s*"buildweek plan"/,
};
export const DECISION_FILE: OutputKind = {
  name: 'a decision',
  mark: /^\s*\{\s*"format":\s*"buildweek decision"/,
};
export const DOUBTS_FILE: OutputKind = {
  name: 'the answer to doubts',
  mark: /^\s*\{\s*"format":\s*"buildweek doubts"/,
};
export const GROWTH_FILE: OutputKind = {
  name: 'the answer to growth',
  mark: /^\s*\{\s*"format":\s*"buildweek growth"/,
};
export const AWAY_FILE: OutputKind = {
  name: 'the answer to an absence',
  mark: /^\s*\{\s*"format":\s*"buildweek away"/,
};
export const STAFF_FILE: OutputKind = {
  name: 'an answer to whom to have when',
  mark: /^\s*\{\s*"format":\s*"buildweek staff"/,
};
export const REPLAY_FILE: OutputKind = {
  name: 'a model held against a log',
  mark: /^\s*\{\s*"format":\s*"buildweek replay"/,
};
export const LEARNED_FILE: OutputKind = {
  name: 'what was learned from a log',
  mark: /^\s*\{\s*"format":\s*"buildweek learned"/,
};
export const MAPPING_FILE: OutputKind = { name: 'a mapping', mark: /^# buildweek mapping:/ };
export const PROMISE_FILE: OutputKind = {
  name: 'a document of promised dates',
  mark: /^\s*\{\s*"format":\s*"buildweek promise"/,
};
export const FROM_LOG_FILE: OutputKind = { name: 'a scenario', mark: /^# buildweek from-log:/ };
export const PROMISE_TABLE_FILE: OutputKind = {
  name: 'a table of promised dates',
  mark: /^\ufeff?(by,"ready|job,part,pieces)/,
};
export const CALENDAR_FILE: OutputKind = {
  name: 'a calendar',
  mark: /^BEGIN:VCALENDAR\r\n(.*\r\n)?PRODID:-\/\/buildweek\/\//,
};
export const REPORT_FILE: OutputKind = {
  name: 'a report',
  mark: /<meta name="generator" content="buildweek /,
};

/**
 * Makes sure, before any work is done, that a file may be written.
 * @param force whether the user said that anything there may be overwritten
 * @throws Failure for bad input when something else stands there
 */
export function checkOutput(path: string, kind: OutputKind, force: boolean): void {
  const folder = statSync(dirname(path), { throwIfNoEntry: false });
  if (folder?.isDirectory() === false)
    throw badInput(`Cannot write ${path}: ${dirname(path)} is not a folder.`);
  if (!existsSync(path) || force || kind.mark.test(kind.inAll === true ? wholeOf(path) : startOf(path)))
    return;
  throw badInput(
    `${path} is there already and is not ${kind.name} that this command wrote. Choose another name, or add --force to overwrite it.`,
  );
}

/** Writes a file whole or not at all, and makes its folder. @throws Failure for bad input when that cannot be done */
export function writeOutput(path: string, content: string | Uint8Array): void {
  const temporary = `${path}.${process.pid}.part`;
  let begun = false;
  try {
    mkdirSync(dirname(path), { recursive: true });
    begun = true;
    writeFileSync(temporary, content);
    renameSync(temporary, path);
  } catch (error) {
    if (begun) rmSync(temporary, { force: true });
    throw badInput(`Cannot write ${path}: ${reasonOf(error)}.`);
  }
}

function wholeOf(path: string): string {
  try {
    return readFileSync(path, 'latin1');
  } catch (error) {
    throw badInput(`Cannot write ${path}: ${reasonOf(error)}.`);
  }
}

function startOf(path: string): string {
  try {
    const file = openSync(path, 'r');
    try {
      const bytes = new Uint8Array(4096);
      return new TextDecoder().decode(bytes.subarray(0, readSync(file, bytes)));
    } finally {
      closeSync(file);
    }
  } catch (error) {
    throw badInput(`Cannot write ${path}: ${reasonOf(error)}.`);
  }
}
