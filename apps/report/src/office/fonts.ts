import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/**
 * The typeface of files for the office. DejaVu Sans Condensed has the letters of Latin, Greek, Cyrillic, Hebrew and
 * Arabic and the signs that the program writes, and runs within three per cent as wide as the typeface that charts
 * are laid out for.
 */
const FILES = {
  regular: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
} as const;

/** Name by which drawings refer to the typeface. */
export const FONT_FAMILY = 'DejaVu Sans Condensed';
/**
 * Words in this typeface are no wider than the layout reckons with when they are set so much smaller: of twelve labels
 * the widest were 1.06 and 1.13 times as wide.
 */
export const FONT_SCALE: Readonly<Record<FontFace, number>> = { regular: 0.95, bold: 0.89 };

export type FontFace = keyof typeof FILES;

export function fontPath(face: FontFace): string {
  return FILES[face];
}

export function fontBytes(face: FontFace): Buffer {
  return readFileSync(FILES[face]);
}
