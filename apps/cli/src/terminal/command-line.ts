/** Needs no quotes in the shells that are in use. */
const BARE = /^[\w./:=,@%+-]+$/;

/**
 * A command of this program as one would type it, to be copied from the terminal.
 *
 * @param words command, arguments and options, without the name of the program
 */
export function commandLine(words: readonly string[]): string {
  return ['buildweek', ...words.map(quoted)].join(' ');
}

/** In double quotes, which every shell knows; with what means something between them set off. */
function quoted(word: string): string {
  return BARE.test(word) ? word : `"${word.replace(/["\\$`]/g, '\\$&')}"`;
}
