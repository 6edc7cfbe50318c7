import { formatLevel } from '@buildweek/charts';
import type { Results, Run } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { buildsTables } from './builds-table.ts';
import { Footnotes } from './footnotes.ts';
import { handLeadTimeTable } from './hand-lead-time-table.ts';
import { handTable } from './hand-table.ts';
import { hoursTable } from './hours-table.ts';
import { leadTimeTable } from './lead-time-table.ts';
import { moneyTables } from './money-tables.ts';
import { queueTable } from './queue-table.ts';
import { sentOutTable } from './sent-out-table.ts';
import { targetTable } from './target-table.ts';
import { troubleTables } from './trouble-table.ts';
import { machineTable, peopleTable, stationTable } from './use-tables.ts';

/** Results for a terminal: the answer first with what to keep in mind, then the tables, what to beware of, and how it was found. */
export function resultsText(results: Results, style: Style): string {
  const footnotes = new Footnotes();
  const sections = [
    style.heading(harmless(results.scenario.name)),
    results.headline.map((sentence) => paragraph(sentence, '  ')).join('\n'),
    ...(results.targets.length > 0 ? [section('Targets', targetTable(results, style), style)] : []),
    section('Lead times by the clock (a day is 24 h)', leadTimeTable(results, footnotes, style), style),
    footnotes.text(),
    listSection('Warnings', results.warnings, style),
    section('Where the hours go', hoursTable(results.hours, style), style),
    ...(results.people.length > 0 ? [section('People', peopleTable(results.people, style), style)] : []),
    ...(results.machines.length > 0
      ? [section('Machines, of all hours', machineTable(results.machines, style), style)]
      : []),
    ...(results.builds.length > 0
      ? [section('Builds, packed from the sizes of parts', buildsTables(results.builds, style), style)]
      : []),
    ...(results.stations.length > 0
      ? [section('Stations, of all hours', stationTable(results.stations, style), style)]
      : []),
    troubleSection(results, style),
    ...(results.sentOut.length > 0
      ? [section('Sent out, made elsewhere', sentOutTable(results.sentOut, style), style)]
      : []),
    ...(results.money === null
      ? []
      : [section('Money', moneyTables(results.money, results.run, style), style)]),
    section('Queues', queueTable(results.queues, style), style),
    handSection(results, style),
    listSection(
      'Cautions',
      results.cautions.map(({ topic, text }) => `${topic}. ${text}`),
      style,
    ),
    section('How this was found', runText(results.run), style),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function troubleSection(results: Results, style: Style): string {
  const tables = troubleTables(results.trouble, style);
  return tables === '' ? '' : section('What goes wrong', tables, style);
}

function handSection({ handCalculation, handLeadTimes, jobs }: Results, style: Style): string {
  if (handCalculation.length === 0) return '';
  const leadTimes = handLeadTimeTable(handLeadTimes, jobs, style);
  const tables = [handTable(handCalculation, style), leadTimes].filter((text) => text !== '');
  return section('The same by hand calculation', tables.join('\n\n'), style);
}

function runText(run: Run): string {
  const weeks = run.weeks === 1 ? '1 week' : `${run.weeks} weeks`;
  const lines = [
    `${run.replications} replications of ${weeks}, seed "${run.seed}"; in brackets: ${formatLevel(run.level)} confidence intervals.`,
    `Ignored weeks before the start: ${run.ignoredWeeks.weeks} (${run.ignoredWeeks.method}). ${run.ignoredWeeks.note}`,
    stopWords(run),
  ];
  return lines.map((line) => paragraph(line, '  ')).join('\n');
}

function stopWords({ stopped, precision, replications }: Run): string {
  if (precision === null || stopped === 'stopped by the user') {
    return stopped === 'stopped by the user'
      ? `Stopped by the user after ${replications} replications.`
      : 'The number of replications asked for was played.';
  }
  const reached = precision.reached === null ? 'no interval' : `${(100 * precision.reached).toFixed(1)} %`;
  const asked = `${precision.measure}: ${reached} reached, ${(100 * precision.asked).toFixed(1)} % asked for`;
  return stopped === 'precision reached'
    ? `The precision was reached (${asked}).`
    : `The precision was NOT reached within ${replications} replications (${asked}).`;
}
