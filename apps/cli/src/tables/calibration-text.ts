import { type CalibratedBuild, type CalibrationAnswer, formatNumber } from '@buildweek/results';
import { clockWords, withDigits } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** So many builds are listed; of more only those that are farthest off. */
const MOST_BUILDS = 15;
const ORIGINS: Readonly<Record<CalibrationAnswer['parameters'][number]['origin'], string>> = {
  fitted: 'fitted',
  'in ratio': 'in its ratio to others',
  'start value': 'kept: the builds say nothing of it',
  zero: 'would be below zero',
};

/** What measured builds say of the print times of a machine, on one screen. */
export function calibrationText(answer: CalibrationAnswer, style: Style): string {
  const { lab, machines, builds, verdict, warnings, notToldApart, lines, doubt } = answer;
  const sections = [
    style.heading(harmless(`Print times of "${machines}" in "${lab}", fitted to ${builds.length} builds`)),
    verdict.map((sentence) => paragraph(sentence, '  ')).join('\n'),
    section('Fitted values', parameterTable(answer, style), style),
    section(buildsTitle(builds), buildTable(builds, style), style),
    listSection(
      'Not told apart',
      notToldApart.map(({ text }) => text),
      style,
    ),
    listSection('Warnings', warnings, style),
    section(
      harmless(`To write under machines / ${machines}, instead of lines that begin alike`),
      lines.map((line) => `    ${harmless(line)}`).join('\n'),
      style,
    ),
    doubt === null
      ? ''
      : section(
          'To write under doubts, for how far the truth may lie from these lines',
          `    ${harmless(doubt)}`,
          style,
        ),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function parameterTable({ parameters, spread }: CalibrationAnswer, style: Style): string {
  const range = (low: string, high: string): string => `${low} to ${high}`;
  const rows = parameters.map(({ label, unit, value, standardError, now, usual, origin }) => ({
    cells: [
      label,
      amount(value),
      standardError === null ? '' : withDigits(standardError, 2),
      amount(now),
      range(String(usual.low), String(usual.high)),
      unit,
      ORIGINS[origin],
    ],
  }));
  const spreadRow = {
    cells: ['print time spread', percent(spread.value), '', percent(spread.now), '', '%', 'what remains'],
  };
  return tableText(
    [
      words('what'),
      numbers('fitted'),
      numbers('standard error'),
      numbers('now'),
      numbers('usual'),
      words('unit'),
      words('where from'),
    ],
    [...rows, spreadRow],
    style,
  );
}

function buildsTitle({ length }: readonly CalibratedBuild[]): string {
  return length > MOST_BUILDS
    ? `The ${MOST_BUILDS} builds that are farthest off, of ${length} (--json has all)`
    : 'Measured against estimated';
}

function buildTable(builds: readonly CalibratedBuild[], style: Style): string {
  const shown =
    builds.length > MOST_BUILDS
      ? builds.toSorted((first, second) => offBy(second) - offBy(first)).slice(0, MOST_BUILDS)
      : builds;
  return tableText(
    [
      words('build'),
      numbers('pieces'),
      numbers('height, mm'),
      numbers('measured'),
      numbers('estimated'),
      numbers('off by'),
      numbers('estimated now'),
    ],
    shown.map((build) => ({
      cells: [
        build.name,
        String(build.pieces),
        formatNumber(build.height, 1),
        clockWords(build.measuredHours),
        clockWords(build.estimatedHours),
        signedPercent(build.estimatedHours / build.measuredHours - 1),
        clockWords(build.estimatedHoursNow),
      ],
    })),
    style,
  );
}

function offBy({ measuredHours, estimatedHours }: CalibratedBuild): number {
  return Math.abs(estimatedHours / measuredHours - 1);
}

function amount(value: number): string {
  return value === 0 ? '0' : withDigits(value, 3);
}

function percent(share: number): string {
  return share === 0 ? '0' : withDigits(100 * share, 2);
}

function signedPercent(share: number): string {
  const text = formatNumber(100 * share, Math.abs(share) < 0.0995 ? 1 : 0);
  return `${share > 0 ? '+' : ''}${text} %`;
}
