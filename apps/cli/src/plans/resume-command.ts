/** Needs no quotes in the shells that are in use. */
const BARE = /^[\w./:=,@%+-]+$/;

/** What to type to go on with a command that was stopped: what was typed, and `--resume`. */
export function resumeCommand(typed: readonly string[]): string {
  const options = typed.filter((word) => word !== '--resume');
  return ['buildweek', ...options.map(quoted), '--resume'].join(' ');
}

/** In double quotes, which every shell knows; with what means something between them set off. */
function quoted(word: string): string {
  return BARE.test(word) ? word : `"${word.replace(/["\\$`]/g, '\\$&')}"`;
}
