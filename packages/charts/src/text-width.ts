import { isolate } from './format.ts';

/**
 * Advance widths of the printable ASCII characters (from the space on) in thousandths of the font size.
 * Source: Adobe Font Metrics of the core font Helvetica, from memory; Arial and its metric-compatible
 * relatives have the same widths.
 */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];

const FIRST = 32;
/** Characters that only turn the direction of writing take no room. */
const DIRECTION_MARK = /[\u200b-\u200f\u202a-\u202e\u2066-\u2069]/;
/** Characters outside ASCII that the program itself writes. Source: as above. */
const WRITTEN: Readonly<Record<string, number>> = { '\u00a0': 278, '›': 333, '“': 333, '”': 333 };
/** Anything else outside ASCII is taken as wide as a capital letter, and ideographs as a square. */
const OTHER = 667;
const SQUARE = 1000;
const FIRST_IDEOGRAPH = 0x2e80;
const BOLD = 1.07;

/**
 * Width of a line of text in CSS pixels, the same on every machine, without a screen.
 *
 * @param text one line
 * @param fontSize CSS pixels
 * @param bold whether it is set in bold
 */
export function textWidth(text: string, fontSize: number, bold = false): number {
  let thousandths = 0;
  for (const letter of text) {
    if (DIRECTION_MARK.test(letter)) continue;
    const code = letter.codePointAt(0) ?? FIRST;
    thousandths += WIDTHS[code - FIRST] ?? WRITTEN[letter] ?? (code >= FIRST_IDEOGRAPH ? SQUARE : OTHER);
  }
  return (thousandths / 1000) * fontSize * (bold ? BOLD : 1);
}

/**
 * A name cut to a width, with the cut marked.
 *
 * @param name from the scenario
 * @param width room in CSS pixels
 * @param fontSize CSS pixels
 * @param bold whether it is set in bold
 */
export function fitName(name: string, width: number, fontSize: number, bold = false): string {
  if (textWidth(name, fontSize, bold) <= width) return isolate(name);
  let kept = '';
  for (const letter of name) {
    if (textWidth(`${kept}${letter}…`, fontSize, bold) > width) break;
    kept += letter;
  }
  return isolate(`${kept.trimEnd()}…`);
}
