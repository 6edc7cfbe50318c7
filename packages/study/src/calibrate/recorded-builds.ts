import type { BuildColumn, BuildRow, RowMistake } from './build-row.ts';
import { LONGEST_PRINT_HOURS, printHoursOf } from './print-hours.ts';

/** A build as it is recorded: what was in it, and how long it printed. */
export interface RecordedBuild {
  readonly name: string;
  /** Of its first row. */
  readonly line: number;
  readonly hours: number;
  /** Pieces by the name of their part. */
  readonly contents: ReadonlyMap<string, number>;
}

export interface RecordedBuilds {
  readonly builds: readonly RecordedBuild[];
  readonly mistakes: readonly RowMistake[];
}

/** Larger numbers are taken for a slip. */
const MOST_PIECES = 100_000;

interface OpenBuild {
  readonly name: string;
  readonly line: number;
  /** First row that says the hours; null: none so far. */
  hours: { readonly text: string; readonly value: number | null; readonly line: number } | null;
  readonly parts: Map<string, { readonly pieces: number; readonly line: number }>;
}

/**
 * Puts rows together to builds. A build without mistakes has its hours and at least one part.
 * @param partOf the name of a part as the lab has it, or what is wrong with the name that is written
 */
export function recordedBuilds(
  rows: readonly BuildRow[],
  partOf: (written: string) => string | Omit<RowMistake, 'line' | 'column' | 'found'>,
): RecordedBuilds {
  const mistakes: RowMistake[] = [];
  const builds = new Map<string, OpenBuild>();
  for (const row of rows) {
    const report = (column: BuildColumn, message: string, expected: string, write: string): void => {
      mistakes.push({ line: row.line, column, message, found: row[column], expected, write });
    };
    const part = row.part === '' ? null : partOf(row.part);
    if (part === null) {
      report('part', 'The part is missing.', 'the name of a part of the scenario', 'the part');
    } else if (typeof part !== 'string') {
      report('part', part.message, part.expected, part.write);
    }
    const pieces = piecesOf(row.pieces);
    if (pieces === null) {
      report(
        'pieces',
        row.pieces === '' ? 'The number of pieces is missing.' : `"${row.pieces}" is no number of pieces.`,
        `a whole number from 1 to ${MOST_PIECES}`,
        '12',
      );
    }
    if (row.build === '') {
      report(
        'build',
        'The name of the build is missing.',
        'a number or a name on every row of a build',
        '17',
      );
      continue;
    }
    const build = builds.get(row.build) ?? { name: row.build, line: row.line, hours: null, parts: new Map() };
    builds.set(row.build, build);
    addHours(build, row, report);
    if (typeof part !== 'string') continue;
    const before = build.parts.get(part);
    if (before !== undefined) {
      report(
        'part',
        `"${part}" is in build ${row.build} already, on line ${before.line}.`,
        'one row for each part type of a build',
        `one row with all pieces, ${before.pieces + (pieces ?? 0)}; or another build`,
      );
    } else build.parts.set(part, { pieces: pieces ?? 0, line: row.line });
  }
  for (const build of builds.values()) {
    if (build.hours !== null) continue;
    mistakes.push({
      line: build.line,
      column: 'hours',
      message: `Nothing says how long build ${build.name} printed.`,
      found: '',
      ...HOURS,
    });
  }
  mistakes.sort((first, second) => first.line - second.line);
  return { builds: [...builds.values()].map(closed), mistakes };
}

const HOURS = { expected: 'print hours, without warm-up and cool-down', write: '5.3, 5:20 or 5 h 20 min' };

function closed({ name, line, hours, parts }: OpenBuild): RecordedBuild {
  const contents = new Map([...parts].map(([part, { pieces }]) => [part, pieces]));
  return { name, line, hours: hours?.value ?? 0, contents };
}

function piecesOf(text: string): number | null {
  return /^\d+$/.test(text) && Number(text) >= 1 && Number(text) <= MOST_PIECES ? Number(text) : null;
}

/** The hours stand on one row of a build, or on all of them and are the same. */
function addHours(
  build: OpenBuild,
  row: BuildRow,
  report: (column: BuildColumn, message: string, expected: string, write: string) => void,
): void {
  if (row.hours === '') return;
  const value = printHoursOf(row.hours);
  const isPossible = value !== null && value > 0 && value <= LONGEST_PRINT_HOURS;
  if (value === null) report('hours', `"${row.hours}" is no time.`, HOURS.expected, HOURS.write);
  else if (value === 0) report('hours', 'A print takes some time.', HOURS.expected, HOURS.write);
  else if (!isPossible) {
    report(
      'hours',
      `${row.hours} is longer than any print.`,
      `at most ${LONGEST_PRINT_HOURS} h`,
      HOURS.write,
    );
  }
  const { hours } = build;
  if (hours === null) build.hours = { text: row.hours, value: isPossible ? value : null, line: row.line };
  else if (isPossible && hours.value !== null && hours.value !== value) {
    report(
      'hours',
      `Build ${build.name} took ${hours.text} on line ${hours.line}, and ${row.hours} here.`,
      'the same hours on every row of a build, or hours on one row only',
      hours.text,
    );
  }
}
