import { formatRange, formatValue, HOURS, JOBS, PERCENT, type Unit } from '@buildweek/charts';
import { decimalsFor, type Estimate, formatNumber } from '@buildweek/results';
import type { CheckedLine } from '../selfcheck/check-case.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

const UNITS: Readonly<Record<CheckedLine['unit'], Unit>> = {
  hours: { ...HOURS, leastDecimals: 2 },
  jobs: { ...JOBS, leastDecimals: 2 },
  share: { ...PERCENT, leastDecimals: 1 },
};

/** Theory, simulation, interval and verdict, line by line, and what it comes to. */
export function selfcheckText(lines: readonly CheckedLine[], seed: string, style: Style): string {
  const failed = lines.filter(({ holds }) => !holds);
  const sections = [
    ...caseTexts(lines, style),
    listSection('Lines that fail', failed.map(failureWords), style),
    [verdict(lines, failed.length), explanation(lines, seed)].map((line) => paragraph(line, '')).join('\n'),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

/** The interval that theory has to lie in: as many standard errors wide as the number of lines asks for. */
export function intervalOf({ simulated, standardError, limit }: CheckedLine): Estimate {
  const halfWidth = limit * standardError;
  return { ...simulated, low: simulated.value - halfWidth, high: simulated.value + halfWidth };
}

const COLUMNS = [
  words('what'),
  numbers('theory'),
  numbers('simulated'),
  numbers('interval'),
  words('verdict'),
];

/** The lines of each case under its name and source; the columns of all cases stand below each other. */
function caseTexts(lines: readonly CheckedLine[], style: Style): string[] {
  const [titles = '', ...rows] = tableText(COLUMNS, lines.map(rowOf), style).split('\n');
  const cases = new Map<string, string[]>();
  lines.forEach((line, index) => {
    const head = [style.heading(line.name), style.faint(paragraph(line.source, '  '))];
    cases.set(line.name, [...(cases.get(line.name) ?? head), rows[index] ?? '']);
  });
  return [titles, ...[...cases.values()].map((own) => own.join('\n'))];
}

function rowOf(line: CheckedLine) {
  const unit = UNITS[line.unit];
  const interval = intervalOf(line);
  return {
    cells: [
      line.what,
      theoryText(line),
      formatValue(interval, unit),
      rangeText(interval, unit),
      line.holds ? 'holds' : 'FAILS',
    ],
  };
}

/** With the decimals of the simulated value, so that the two can be compared at a glance. */
function theoryText(line: CheckedLine): string {
  const unit = UNITS[line.unit];
  const { value, low, high } = intervalOf(line);
  const decimals = decimalsFor(value / unit.size, (high - low) / unit.size, unit.leastDecimals);
  return formatNumber(line.theory / unit.size, decimals);
}

function rangeText(interval: Estimate, unit: Unit): string {
  return formatRange(interval, unit) ?? formatValue(interval, unit);
}

function failureWords(line: CheckedLine): string {
  const unit = UNITS[line.unit];
  const interval = intervalOf(line);
  return `${line.name}, ${line.what}: theory says ${theoryText(line)}, simulated ${formatValue(interval, unit)} (${rangeText(interval, unit)}); ${Math.abs(line.score).toFixed(1)} standard errors apart, at most ${line.limit.toFixed(1)} may be.`;
}

function verdict(lines: readonly CheckedLine[], failed: number): string {
  if (failed === 0) return `Every line holds (${lines.length} of ${lines.length}).`;
  const count = failed === 1 ? '1 line fails' : `${failed} lines fail`;
  return `${count}, ${lines.length - failed} of ${lines.length} hold. Check again with another --seed: what fails by chance does not fail twice. If it does, this program is not to be trusted.`;
}

function explanation(lines: readonly CheckedLine[], seed: string): string {
  const [first] = lines;
  const limit = first === undefined ? '' : `${first.limit.toFixed(2)} standard errors to each side`;
  return `Seed "${seed}", ${first?.simulated.replications ?? 0} replications of each queue. A line holds when theory lies in the interval. The intervals (${limit}) are corrected for the number of lines: with a program that is right, about one check in a hundred finds a line that fails by chance.`;
}
