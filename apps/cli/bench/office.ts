import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chartFilesOf, csvOf, pdfOf, slidesOf, workbookOf } from '@buildweek/report/office';
import { parseReportDocument, type ReportDocument } from '@buildweek/results';

// The bench of files for the office: bench/dist/bench/office.js. It plays the demo, then makes each file of the results
// three times, and fails when one takes more processor time than a few seconds.

const ROUNDS = 3;
const MOST_SECONDS = 5;

const MAKERS: readonly (readonly [string, (document: ReportDocument) => unknown])[] = [
  ['PDF', pdfOf],
  ['slides', slidesOf],
  ['workbook', workbookOf],
  ['CSV', csvOf],
  ['all charts as SVG and PNG', chartFilesOf],
];

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? Number.NaN;
}

function demoResults(): ReportDocument {
  const folder = mkdtempSync(join(tmpdir(), 'buildweek-'));
  const path = join(folder, 'demo.json');
  const command = [
    'bin/buildweek.js',
    'run',
    '../../scenarios/demo.yaml',
    '--replications',
    '20',
    '--json',
    path,
  ];
  const { status, stderr } = spawnSync(process.execPath, command, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`The demo could not be played: ${stderr}`);
  const document = parseReportDocument(readFileSync(path, 'utf8'));
  rmSync(folder, { recursive: true });
  return document;
}

/** Seconds of the processor, and by the clock. */
async function taken(make: () => unknown): Promise<readonly [number, number]> {
  const clock = performance.now();
  const before = process.cpuUsage();
  await make();
  const { user, system } = process.cpuUsage(before);
  return [(user + system) / 1e6, (performance.now() - clock) / 1000];
}

const document = demoResults();
const load = loadavg()[0]?.toFixed(1) ?? '';
print(
  `Files for the office, of the demo's results, on ${cpus()[0]?.model ?? 'unknown'}, load ${load}, Node ${process.version}`,
);
let tooSlow = 0;
for (const [name, make] of MAKERS) {
  const rounds: (readonly [number, number])[] = [];
  for (let round = 0; round < ROUNDS; round++) rounds.push(await taken(() => make(document)));
  const processor = median(rounds.map(([one]) => one));
  const clock = median(rounds.map(([, one]) => one));
  if (processor > MOST_SECONDS) tooSlow += 1;
  print(`  ${name}: ${processor.toFixed(2)} s of the processor, ${clock.toFixed(2)} s by the clock`);
}
print(
  tooSlow === 0
    ? `All within ${MOST_SECONDS} s of the processor.`
    : `${tooSlow} took more than ${MOST_SECONDS} s.`,
);
process.exitCode = tooSlow === 0 ? 0 : 1;
