/** A change of a scenario in its own words: `people / technicians / count: 3`. */
export interface ChangeWording {
  /** As it was given, tidied. */
  readonly wording: string;
  /** Keys and names from the top of the file, or from a name that is there once. */
  readonly path: readonly string[];
  /** What is to stand there, as it would be written in the file. */
  readonly value: string;
}

/** A change that cannot be made; says what was found and what to write. */
export class ChangeError extends Error {
  readonly write: string;

  constructor(message: string, write: string) {
    super(message);
    this.write = write;
  }
}

const EXAMPLE = 'people / technicians / count: 3';

/**
 * Reads changes: places and values with a colon between them, the steps of a place with a stroke, several changes with
 * a semicolon. A name with such a sign in it stands in double quotes, and so may texts of values.
 *
 * @throws ChangeError
 */
export function readChanges(text: string): ChangeWording[] {
  return splitOutsideQuotes(text, ';')
    .map((one) => one.trim())
    .filter((one) => one !== '')
    .map(readChange);
}

/**
 * A change whose place and value stand apart, as a key of a file and what belongs to it.
 *
 * @throws ChangeError when the place is none
 */
export function changeOf(place: string, value: string): ChangeWording {
  return readChange(`${place}: ${value}`);
}

/** A place as it can be written in a change: names in which a stroke or another sign parts steps stand in quotes. */
export function placeText(path: readonly string[]): string {
  return path.map((step) => (/[/;"]|:(?=\s|$)/.test(step) ? JSON.stringify(step) : step)).join(' / ');
}

const QUOTED = /"(?:[^"\\]|\\.)*"/g;

/** The text with what stands between double quotes blotted out, letter by letter, so that signs in it part nothing. */
function blotted(text: string): string {
  return text.replace(QUOTED, (quoted) => '_'.repeat(quoted.length));
}

/** Parts a text at a sign that stands outside of quotes. */
function splitOutsideQuotes(text: string, sign: string): string[] {
  let start = 0;
  return blotted(text)
    .split(sign)
    .map(({ length }) => {
      const part = text.slice(start, start + length);
      start += length + sign.length;
      return part;
    });
}

function stepOf(text: string): string {
  const step = text.trim();
  if (!/^"(?:[^"\\]|\\.)*"$/.test(step)) return step;
  try {
    return String(JSON.parse(step));
  } catch {
    return step;
  }
}

function readChange(text: string): ChangeWording {
  const colon = blotted(text).search(/:(?=\s|$)/);
  if (colon < 0) {
    throw new ChangeError(`"${text}" is no change: a place, a colon and a value are needed.`, EXAMPLE);
  }
  const path = splitOutsideQuotes(text.slice(0, colon), '/').map(stepOf);
  const value = text.slice(colon + 1).trim();
  if (path.some((step) => step === '')) {
    throw new ChangeError(`"${text}" names no place: a step between two strokes is empty.`, EXAMPLE);
  }
  if (value === '')
    throw new ChangeError(`"${text}" has no value behind the colon.`, `${placeText(path)}: 3`);
  return { wording: `${placeText(path)}: ${value}`, path, value };
}
