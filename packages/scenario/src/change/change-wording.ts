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
 * a semicolon.
 *
 * @throws ChangeError
 */
export function readChanges(text: string): ChangeWording[] {
  return text
    .split(';')
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

function readChange(text: string): ChangeWording {
  const colon = /:(?=\s|$)/.exec(text);
  if (colon === null) {
    throw new ChangeError(`"${text}" is no change: a place, a colon and a value are needed.`, EXAMPLE);
  }
  const path = text
    .slice(0, colon.index)
    .split('/')
    .map((step) => step.trim());
  const value = text.slice(colon.index + 1).trim();
  if (path.some((step) => step === '')) {
    throw new ChangeError(`"${text}" names no place: a step between two strokes is empty.`, EXAMPLE);
  }
  if (value === '')
    throw new ChangeError(`"${text}" has no value behind the colon.`, `${path.join(' / ')}: 3`);
  return { wording: `${path.join(' / ')}: ${value}`, path, value };
}
