/** Marks of the Unicode bidirectional algorithm that turn the text around them. */
const TURNING_MARKS = /[\u202a-\u202e\u2066-\u2069]/g;
/** Control characters other than the end of a line, which no office format may hold. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u0008\u000b-\u001f\u007f\ufffe\uffff]/g;

/** Text as office formats take it: without control characters and without marks that turn the direction of writing. */
export function plainText(text: string): string {
  return text
    .replace(/\t/g, ' ')
    .replace(TURNING_MARKS, '')
    .replace(CONTROLS, '\ufffd')
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd');
}

const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;
/** A letter without any shape that runs from left to right. */
const LEFT_TO_RIGHT_MARK = '\u200e';

/** A name in a line that runs from left to right whatever the name does, so that what stands behind it stays there. */
export function keptInPlace(name: string): string {
  return RIGHT_TO_LEFT.test(name) ? `${LEFT_TO_RIGHT_MARK}${name}${LEFT_TO_RIGHT_MARK}` : name;
}
