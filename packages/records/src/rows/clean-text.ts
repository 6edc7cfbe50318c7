const LONGEST = 80;

/**
 * Text of a cell that may stand on a screen and in a file: without controls and marks that turn the direction of
 * writing, on one line, and not longer than a name is; a name that no key of an object can have is cut. Null when
 * nothing is left.
 */
export function cleanText(cell: string | undefined): string | null {
  const text = (cell ?? '')
    .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, LONGEST);
  if (text === '__proto__') return 'proto';
  return text === '' ? null : text;
}

/** Whether a spreadsheet would take the cell for a formula. Numbers with a sign are none. */
export function isFormula(cell: string): boolean {
  return /^\s*[=@]/.test(cell) || /^\s*[+-]\s*[^\s\d.,+-]/.test(cell);
}
