import type { Reading } from '../reading.ts';
import type { ScenarioTarget } from '../scenario.ts';
import type { ProblemDetail } from '../source/source-text.ts';

/** Reports what is wrong with a target, at the words of it that are meant where they stand there as they are. */
export function reportTarget(
  reading: Reading,
  { path }: Pick<ScenarioTarget, 'path'>,
  words: string,
  detail: ProblemDetail,
): void {
  const span = reading.locate(path, 'value');
  const at = words === '' ? -1 : reading.source.text.slice(span.start, span.end).indexOf(words);
  // Marks the target as wrong as well; the same message at two places would be told twice.
  if (at < 0) reading.report(path, 'value', detail);
  else reading.reportSpan({ start: span.start + at, end: span.start + at + words.length }, detail);
}
