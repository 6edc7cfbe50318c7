import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { History } from './history.ts';

/** What a value is written as; a byte in front of each, so that no two records are written alike. */
const TAG_NULL = 0;
const TAG_FALSE = 1;
const TAG_TRUE = 2;
const TAG_NUMBER = 3;
const TAG_TEXT = 4;
const TAG_NUMBERS = 5;
const TAG_LIST = 6;
const TAG_RECORD = 7;

/** What a history is made of. */
type Recorded =
  | null
  | boolean
  | number
  | string
  | Float64Array
  | readonly Recorded[]
  | { readonly [name: string]: Recorded };

/**
 * SHA-256 (FIPS 180-4) over every number and name of a history, the trace left out: two replications that went
 * the same way have the same hash, whether they were traced or not. Zero is the same with either sign.
 *
 * @param history of one replication, or any part of one (its machines, its queues)
 * @returns 64 hexadecimal digits
 * @throws TypeError when something in it is neither a number, a name, a list nor a record
 */
export function hashHistory(history: Partial<History>): string {
  const { trace: _, states: __, ...untraced } = history;
  const hash = sha256.create();
  write(untraced as unknown as Recorded, (bytes) => {
    hash.update(bytes);
  });
  return bytesToHex(hash.digest());
}

function write(value: Recorded, put: (bytes: Uint8Array) => void): void {
  if (value === null) put(Uint8Array.of(TAG_NULL));
  else if (typeof value === 'boolean') put(Uint8Array.of(value ? TAG_TRUE : TAG_FALSE));
  else if (typeof value === 'number') put(numbers(TAG_NUMBER, [value]));
  else if (typeof value === 'string') writeText(value, put);
  else if (value instanceof Float64Array) put(numbers(TAG_NUMBERS, [value.length, ...value]));
  else if (isList(value)) {
    put(numbers(TAG_LIST, [value.length]));
    for (const member of value) write(member, put);
  } else if (typeof value === 'object') {
    const names = Object.keys(value).sort();
    put(numbers(TAG_RECORD, [names.length]));
    for (const name of names) {
      writeText(name, put);
      write(value[name], put);
    }
  } else throw new TypeError(`A history cannot hold ${typeof value}.`);
}

function writeText(text: string, put: (bytes: Uint8Array) => void): void {
  const bytes = utf8ToBytes(text);
  put(numbers(TAG_TEXT, [bytes.length]));
  put(bytes);
}

/** A tag and numbers as little-endian doubles, the same on every machine. */
function numbers(tag: number, values: readonly number[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(1 + values.length * 8));
  view.setUint8(0, tag);
  // Adding zero gives both zeros the same sign.
  values.forEach((value, position) => {
    view.setFloat64(1 + position * 8, Number.isNaN(value) ? Number.NaN : value + 0, true);
  });
  return new Uint8Array(view.buffer);
}

function isList(value: Recorded): value is readonly Recorded[] {
  return Array.isArray(value);
}
