/** Marks of the Unicode bidirectional algorithm: they order the text around them and are no letters themselves. */
const DIRECTION_MARKS = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
/** Control characters other than the end of a line, which no office format may hold. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u0008\u000b-\u001f\u007f\ufffe\uffff]/g;

/** Text as office formats take it: without control characters and without marks that turn the direction of writing. */
export function plainText(text: string): string {
  return text
    .replace(/\t/g, ' ')
    .replace(DIRECTION_MARKS, '')
    .replace(CONTROLS, '\ufffd')
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd');
}
