import type { PlayBase } from './play-base.ts';
import { sharpReplications } from './replications.ts';

/**
 * The command that gives the same numbers as the page, as one would type it.
 * @param wordings the changes
 */
export function compareCommand(wordings: readonly string[], run: PlayBase['run']): string {
  const words = [
    'compare',
    'scenario.yaml',
    '--with',
    wordings.join('; '),
    '--replications',
    String(sharpReplications(run.replications)),
    '--seed',
    run.seed,
    '--weeks',
    String(run.weeks),
    '--ignored-weeks',
    String(run.ignoredWeeks),
  ];
  return ['buildweek', ...words.map(quoted)].join(' ');
}

/** In double quotes, which every shell knows; with what means something between them set off. */
function quoted(word: string): string {
  return /^[\w./:=,@%+-]+$/.test(word) ? word : `"${word.replace(/["\\$`]/g, '\\$&')}"`;
}
