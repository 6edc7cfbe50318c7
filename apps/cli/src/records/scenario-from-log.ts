import { basename } from 'node:path';
import { firstScenario } from '@buildweek/records';
import { formatProblem } from '@buildweek/scenario';
import { handAnswer } from '@buildweek/study';
import { readingOf } from '../files/scenario-file.ts';
import type { ChangedScenario } from './change-from-log.ts';
import type { LogFacts } from './log-facts.ts';
import type { ReadLog } from './read-log.ts';

const DAY = 86_400_000;
/**
 * Above this load by hand arithmetic, which counts full builds, one more is taken: the least work that the demand asks
 * for must leave room for builds that are not full. Common practice, no source.
 */
const COMFORTABLE_LOAD = 0.75;
/** More people and stations are not added, whatever the demand: then something in the log is misread. */
const MOST_ADDED = 200;

/**
 * A whole scenario from a log alone, with as many people and stations as carry the demand comfortably by hand.
 * @throws Error when what comes out cannot be read: a mistake of the program
 */
export function scenarioFromLog(log: ReadLog, facts: LogFacts): ChangedScenario {
  const textWith = (counts: ReadonlyMap<string, number>): string =>
    firstScenario({
      ...facts,
      log: basename(log.requests.table.path),
      learnedUntil: new Date(facts.until - 1).toISOString().slice(0, 10),
      starts: mondayAfter(log.until),
      zone: log.zone,
      counts,
    });
  return { text: textWith(enough(textWith)), left: [] };
}

/** The fewest people and stations of which none has too high a load: added one by one, then taken away where not needed. */
function enough(textWith: (counts: ReadonlyMap<string, number>) => string): ReadonlyMap<string, number> {
  let counts: ReadonlyMap<string, number> = new Map();
  for (let added = 0; added < MOST_ADDED; added++) {
    const busiest = busiestGroup(textWith(counts));
    if (busiest === null) break;
    counts = new Map([...counts, [busiest, (counts.get(busiest) ?? 1) + 1]]);
  }
  for (const [name, count] of [...counts].reverse()) {
    const fewer = new Map([...counts, [name, count - 1]]);
    if (busiestGroup(textWith(fewer)) === null) counts = fewer;
  }
  return counts;
}

/** The people or station with the highest load by hand arithmetic, the machines as they are; null when all are at ease. */
function busiestGroup(text: string): string | null {
  const reading = readingOf(text, 'scenario from log', '');
  if (reading.kind !== 'scenario') {
    throw new Error(`${reading.problems.map(formatProblem).join('\n\n')}\n\n${text}`);
  }
  const { loads } = handAnswer(reading.lab, { fromWeek: 0, weeks: 13 });
  const [busiest] = loads
    .filter(({ kind, load }) => kind !== 'machine' && load !== null && load > COMFORTABLE_LOAD)
    .sort((a, b) => (b.load ?? 0) - (a.load ?? 0));
  return busiest?.name ?? null;
}

/** The Monday behind a time, as a date. */
function mondayAfter(time: number): string {
  const day = Math.floor(time / DAY) + 1;
  // 1970-01-01 was a Thursday.
  const untilMonday = (((4 - day) % 7) + 7) % 7;
  return new Date((day + untilMonday) * DAY).toISOString().slice(0, 10);
}
