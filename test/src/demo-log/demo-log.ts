import { createStream } from '@buildweek/core';
import type { ShapeReader } from '@buildweek/scenario';
import { type Cells, HEADINGS, soiled } from './dirt.ts';
import { machineRuns, type PlayedRun } from './machine-runs.ts';
import { playYear } from './play-year.ts';
import { type PlayedRequest, playedRequests } from './requests.ts';
import { LOG_END, LOG_START, TRUE_CHANGES, TRUTH_FILE } from './truth.ts';

/** Numbers of requests begin with this one. */
const FIRST_NUMBER = 26_001;
/** Grams of one piece, for a column that nobody needs. */
const GRAMS: Readonly<Record<string, number>> = {
  housing: 46.5,
  'drill jig': 88.2,
  'flow channel': 31.4,
  bracket: 12.8,
  gear: 4.7,
  'cable clip': 2.3,
  hinge: 18.4,
};

/**
 * The files of the demo log by name: requests, records of the machines, and what is true.
 * @param demo text of `scenarios/demo.yaml`
 * @param shapes reads the meshes that it names
 */
export function demoLog(demo: string, shapes: ShapeReader): ReadonlyMap<string, string> {
  const year = playYear(demo, shapes);
  const from = Date.parse(`${LOG_START}T00:00:00Z`);
  const until = Date.parse(`${LOG_END}:00Z`);
  const runs = machineRuns(year, from - 28 * 86_400_000, until);
  const requests = playedRequests(year, runs, from, until);
  const first = requests[0]?.job ?? 0;
  const numberOf = (job: number): number => FIRST_NUMBER + job - first;
  return new Map([
    ['demo-log.csv', requestList(requests, numberOf)],
    [
      'demo-machines.csv',
      machineRecord(
        runs.filter(({ start }) => start >= from),
        numberOf,
      ),
    ],
    [
      TRUTH_FILE,
      `${JSON.stringify({ scenario: 'demo.yaml', from: LOG_START, until: LOG_END, changes: TRUE_CHANGES }, null, 2)}\n`,
    ],
  ]);
}

/** Semicolons, day first, decimal commas, and a byte order mark. */
function requestList(requests: readonly PlayedRequest[], numberOf: (job: number) => number): string {
  const draw = createStream('demo log', 0, 'weights', 'requests');
  const clean = requests.map((request): Cells => {
    const grams = (GRAMS[request.part] ?? 10) * request.pieces * (0.97 + 0.06 * draw());
    return {
      No: String(numberOf(request.job)),
      Received: minute(request.received),
      Part: request.part,
      Qty: String(request.pieces),
      Process: request.process,
      Material: request.material,
      Priority: request.rush ? 'rush' : 'normal',
      Promised: request.promised === null ? '' : minute(request.promised).slice(0, 10),
      Printer: request.machine,
      'Print start': minute(request.printStart),
      'Print end': minute(request.printEnd),
      'Remove supports work start': minute(request.supportStart),
      'Remove supports work end': minute(request.supportEnd),
      Ready: minute(request.ready),
      Status: request.cancelled ? 'cancelled' : request.ready === null ? 'open' : 'done',
      Step: request.step,
      'Requested by': '',
      'Weight g': grams.toFixed(1).replace('.', ','),
      Remark: '',
    };
  });
  const lines = [[...HEADINGS], ...soiled(clean)].map((cells) =>
    cells.map((cell) => quoted(cell, ';')).join(';'),
  );
  return `\uFEFF${lines.join('\r\n')}\r\n`;
}

/** Commas, the year first, seconds: the machines keep their own list. */
function machineRecord(runs: readonly PlayedRun[], numberOf: (job: number) => number): string {
  const lines = runs.map(({ machine, start, end, outcome, jobs }) =>
    [
      machine,
      second(start),
      end === null ? '' : second(end),
      outcome === 'running' ? 'printing' : outcome,
      jobs.map(numberOf).join(' '),
    ].join(','),
  );
  return ['machine,start,end,result,jobs', ...lines].join('\n').concat('\n');
}

function quoted(cell: string, separator: string): string {
  return cell.includes(separator) || /["\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** `16.02.2026 09:15` */
function minute(time: number | null): string {
  if (time === null) return '';
  const text = new Date(time).toISOString();
  return `${text.slice(8, 10)}.${text.slice(5, 7)}.${text.slice(0, 4)} ${text.slice(11, 16)}`;
}

/** `2026-02-16 09:15:00` */
function second(time: number): string {
  return new Date(time).toISOString().slice(0, 19).replace('T', ' ');
}
