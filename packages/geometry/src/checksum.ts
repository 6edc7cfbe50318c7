const TABLE = new Uint32Array(256).map((_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** CRC-32 of what came so far and of these bytes (ISO 3309, as ZIP uses it); begin with 0. */
export function checksum(before: number, bytes: Uint8Array): number {
  let value = ~before;
  for (let at = 0; at < bytes.length; at++) value = TABLE[(value ^ bytes[at]) & 255] ^ (value >>> 8);
  return ~value >>> 0;
}
