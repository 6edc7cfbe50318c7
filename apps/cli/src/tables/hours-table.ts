import { formatEstimate, PLAIN } from '@buildweek/charts';
import type { Estimate, PartHours, StepHours, WaitCause } from '@buildweek/results';
import { stepWords } from '@buildweek/study';
import type { Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import { WAITS_FOR } from './story-words.ts';

/** Hours below this share of the lead time of a part are not worth a line. */
const SMALLEST_SHARE = 0.01;

/** Where the hours of a job go, part by part: steps and causes of waiting, largest first. */
export function hoursTable(parts: readonly PartHours[], style: Style): string {
  const rows = parts.flatMap((part): Row[] => {
    const entries = entriesOf(part);
    const total = entries.reduce((sum, entry) => sum + entry.value, 0);
    return entries
      .filter((entry) => entry.value >= SMALLEST_SHARE * total)
      .sort((one, other) => other.value - one.value)
      .map((entry, index) => ({ cells: [index === 0 ? part.part : '', entry.what, entry.text] }));
  });
  return tableText([words('part'), words('what the hours go to'), numbers('hours a job')], rows, style);
}

interface Entry {
  readonly what: string;
  readonly value: number;
  readonly text: string;
}

function entriesOf(part: PartHours): Entry[] {
  return part.steps.flatMap((step) => [
    entry(stepWords(step), step.work),
    ...step.waits.map((wait) =>
      entry(`wait before ${stepWords(step)}, for ${waitedFor(wait.cause, step)}`, wait.hours),
    ),
  ]);
}

function waitedFor(cause: WaitCause, { phase }: StepHours): string {
  if (cause !== 'machine') return WAITS_FOR[cause];
  return phase === 'load' || phase === 'run' ? 'a station' : 'a machine';
}

function entry(what: string, hours: Estimate): Entry {
  return { what, value: hours.value, text: formatEstimate(hours, PLAIN) };
}
