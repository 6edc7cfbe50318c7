import { learnedFigures, type Sourced, type SourcedChoice } from '@buildweek/records';
import { formatNumber, LEARNED_VERSION, type LearnedAnswer } from '@buildweek/results';
import { programVersion } from '../program-version.ts';
import type { ChangedScenario } from './change-from-log.ts';
import type { LogFacts } from './log-facts.ts';
import { logReading } from './log-reading.ts';
import type { ReadLog } from './read-log.ts';

const ALL_PARTS = 'all parts';

/** What was read of a log and learned from it, as a document. */
export function learnedAnswer(log: ReadLog, facts: LogFacts, made: ChangedScenario): LearnedAnswer {
  const figures = learnedFigures(facts.log, facts.runs, facts.machines, facts.arrivals);
  return {
    format: 'buildweek learned',
    version: LEARNED_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    reading: logReading(log),
    learnedUntil: new Date(facts.until - 1).toISOString().slice(0, 10),
    verdict: verdictOf(facts, figures.weeks),
    values: valuesOf(facts),
    ...figures,
    scenario: made.text,
    left: [...made.left],
  };
}

function valuesOf({ learned }: LogFacts): LearnedAnswer['values'] {
  return [
    ...named(learned.jobs, 'jobs'),
    ...forAll(learned.when, 'when'),
    ...forAll(learned.growth, 'growth'),
    ...forAll(learned.weekVariation, 'varies from week to week'),
    ...named(learned.rush, 'rush'),
    ...named(learned.fails, 'fails'),
    ...named(learned.breakdowns, 'breaks down'),
    ...[...learned.prints, ...learned.partPrints].map(([name, choice]) =>
      learnedValue(name, 'print', choice),
    ),
    ...[...learned.stages].flatMap(([part, stages]) =>
      [...stages].map(([stage, choice]) => learnedValue(part, stage, choice)),
    ),
  ];
}

function named(values: ReadonlyMap<string, Sourced>, what: string): LearnedAnswer['values'] {
  return [...values].map(([name, value]) => learnedValue(name, what, value));
}

function forAll(value: Sourced | null, what: string): LearnedAnswer['values'] {
  return value === null ? [] : [learnedValue(ALL_PARTS, what, value)];
}

function learnedValue(
  of: string,
  what: string,
  { value, source, ...more }: Sourced | SourcedChoice,
): LearnedAnswer['values'][number] {
  const others = 'others' in more ? more.others.map((other) => other.value) : [];
  return { of, what, value, source, others };
}

/** The log in a few sentences. */
function verdictOf(
  { parts, log, hours }: LogFacts,
  { mean, counts, variation }: LearnedAnswer['weeks'],
): string[] {
  const [most] = parts;
  const open = log.jobs.filter(({ isOpen }) => isOpen).length;
  const differ =
    variation > 0
      ? `, and whole weeks differ by ${Math.round(100 * variation)} % beyond chance`
      : ', and weeks differ by chance alone';
  return [
    `${formatNumber(mean, mean < 10 ? 1 : 0)} jobs a week are asked for in ${counts.length} whole weeks${counts.length === 0 ? '' : differ}.`,
    ...(most === undefined
      ? []
      : [
          `${parts.length} ${parts.length === 1 ? 'part is' : 'parts are'} asked for, “${most.name}” most often: ${most.jobs} of ${log.jobs.length} jobs.`,
        ]),
    ...(open === 0 ? [] : [`${open} jobs are open at the end of the log.`]),
    ...(hours === null
      ? []
      : [
          `Somebody is in from ${hours.fromHour}:00 to ${hours.toHour}:00, as finishes and beginnings of work tell.`,
        ]),
  ];
}
