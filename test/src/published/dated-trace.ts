import { createSimulator, type TraceEntry } from '@buildweek/core';
import { formatProblem, readScenario } from '@buildweek/scenario';

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/**
 * Plays one traced replication of a scenario text in whose zone clocks do not change.
 *
 * @returns for each step its stage and phase, its last start and its end, pauses left out, in the order of their
 *   ends: `build, set-up: Fri 2025-01-10 15:30 -> Fri 2025-01-10 16:00`
 * @throws Error when the text has problems, or a step does not end
 */
export function datedTrace(text: string): string[] {
  const reading = readScenario(text, 'published.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  const { lab, settings } = reading;
  const { trace } = createSimulator(lab).simulate({
    seed: settings.seed,
    replication: 0,
    ignoredWeeks: 0,
    weeks: settings.weeks,
    capWeeks: settings.capWeeks,
    trace: true,
    queueWaits: false,
  });
  const clock = (milliseconds: number): string => {
    const at = new Date(Date.parse(`${lab.startDate}T00:00Z`) + milliseconds);
    return `${WEEKDAYS[at.getUTCDay()]} ${at.toISOString().slice(0, 16).replace('T', ' ')}`;
  };
  const starts = new Map<string, number>();
  const lines: string[] = [];
  for (const entry of trace ?? []) {
    const key = `${entry.job} ${nameOf(entry)}`;
    if (entry.what === 'step starts') starts.set(key, entry.time);
    if (entry.what !== 'step ends') continue;
    const start = starts.get(key);
    if (start === undefined) throw new Error(`${key} ends without a start.`);
    lines.push(`${nameOf(entry)}: ${clock(start)} -> ${clock(entry.time)}`);
  }
  return lines;
}

function nameOf({ stage, phase }: TraceEntry): string {
  // Repairs and maintenance have a name alone.
  return stage === null ? `${phase}` : `${stage}, ${phase}`;
}
