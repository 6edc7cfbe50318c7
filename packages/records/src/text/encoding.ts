/** How the letters of a table are written as bytes. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/**
 * The encoding that a byte order mark tells, or that zeros beside every letter give away; UTF-8 otherwise, which
 * whoever decodes leaves for Windows-1252 when the bytes are no UTF-8.
 *
 * @param start some hundred bytes
 */
export function guessEncoding(start: Uint8Array): Encoding {
  if (start[0] === 0xff && start[1] === 0xfe) return 'utf-16le';
  if (start[0] === 0xfe && start[1] === 0xff) return 'utf-16be';
  let even = 0;
  let odd = 0;
  for (const [index, byte] of start.entries()) {
    if (byte !== 0) continue;
    if (index % 2 === 0) even++;
    else odd++;
  }
  const many = start.length / 4;
  if (odd > many && even === 0) return 'utf-16le';
  if (even > many && odd === 0) return 'utf-16be';
  return 'utf-8';
}

/** What a file that is no text is, from its first bytes; null for text. */
export function notText(start: Uint8Array): string | null {
  const begins = (...bytes: number[]): boolean => bytes.every((byte, index) => start[index] === byte);
  if (begins(0x50, 0x4b, 0x03, 0x04)) return 'a workbook or another packed file';
  if (begins(0xd0, 0xcf, 0x11, 0xe0)) return 'a workbook of an old kind';
  if (begins(0x25, 0x50, 0x44, 0x46)) return 'a PDF';
  if (begins(0x1f, 0x8b)) return 'a packed file';
  if (guessEncoding(start) === 'utf-8' && start.includes(0)) return 'a file that is no text';
  return null;
}

/** Letters of Windows-1252 at the bytes 0x80 to 0x9f, where ISO 8859-1 has controls; five bytes have none. */
const LETTERS = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** @param latin bytes as they stand, one character a byte */
export function fromWindows1252(latin: string): string {
  return latin.replace(/[\u0080-\u009f]/g, (byte) => LETTERS[byte.charCodeAt(0) - 0x80] ?? byte);
}
