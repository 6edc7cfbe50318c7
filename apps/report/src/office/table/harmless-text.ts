import { plainText } from '../plain-text.ts';

/** What makes a spreadsheet take a cell for a formula, also where it stands behind spaces. */
const STARTS_FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r]/;

/**
 * Text as it may stand in a cell of a table that a spreadsheet opens: where it would start a formula, an apostrophe is
 * set before it, which spreadsheets take as "this is text". For text alone: numbers, negative ones too, never come here.
 */
export function harmlessText(text: string): string {
  return STARTS_FORMULA.test(text) ? `'${plainText(text)}` : plainText(text);
}
