import { expect, test } from 'vitest';
import { checksum } from './checksum.ts';

// Check value of CRC-32/ISO-HDLC, from memory.
test('The checksum of the digits one to nine is the published check value, in one piece or two', () => {
  const digits = Uint8Array.from([...'123456789'].map((digit) => digit.charCodeAt(0)));
  expect(checksum(0, digits)).toBe(0xcbf43926);
  expect(checksum(checksum(0, digits.subarray(0, 4)), digits.subarray(4))).toBe(0xcbf43926);
});
