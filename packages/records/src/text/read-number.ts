/**
 * The number that a cell tells, whichever of dot and comma is its decimal mark: `12`, `2,5`, `1.234,5`, `1 234`,
 * `3 pcs`. Exactly three digits behind a single mark are thousands when a whole number is expected.
 *
 * @returns null when it tells none
 */
export function readNumber(cell: string, expectsWhole: boolean): number | null {
  const found = /^(?:ca\.?|~|≈)?\s*([+-]?\d[\d.,' \u00a0\u202f]*)\s*(?:\p{L}[\p{L}. ]{0,11})?$/u.exec(
    cell.trim(),
  );
  if (found === null) return null;
  const digits = (found[1] ?? '').replace(/[' \u00a0\u202f]/g, '');
  const marks = digits.match(/[.,]/g) ?? [];
  const last = marks[marks.length - 1] ?? '';
  const isThousands =
    (marks.length === 1 && expectsWhole && /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(digits)) ||
    (marks.length > 1 && marks.every((mark) => mark === last));
  const plain = isThousands
    ? digits.replace(/[.,]/g, '')
    : digits.replace(/[.,](?=.*[.,])/g, '').replace(',', '.');
  const value = Number(plain);
  return plain !== '' && Number.isFinite(value) ? value : null;
}
