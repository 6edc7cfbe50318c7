import { Inflate, strFromU8 } from 'fflate';
import { checksum } from './checksum.ts';
import { MeshError } from './mesh-error.ts';
import { READ_LIMITS } from './read-limits.ts';

/** Compressed bytes that are unpacked at a time: deflate makes at most 1032 times as many of them. */
const PIECE_BYTES = 16 * 1024;
const DAMAGED = 'The file is damaged or cut off: export or copy it again.';
const END_OF_DIRECTORY = 0x06054b50;
const END_OF_DIRECTORY_64 = 0x06064b50;
const DIRECTORY_ENTRY = 0x02014b50;
const LOCAL_HEADER = 0x04034b50;

interface Entry {
  readonly method: number;
  readonly encrypted: boolean;
  readonly checksum: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly headerAt: number;
}

/**
 * A ZIP archive in memory (ISO/IEC 21320-1 and PKWARE's APPNOTE, sections 4.3 to 4.5): files are found through the
 * central directory and unpacked piece by piece, with the size that the directory states and the limit both held.
 */
export class ZipArchive {
  readonly #bytes: Uint8Array;
  readonly #data: DataView;
  readonly #entries = new Map<string, Entry>();
  readonly #mostBytes: number;
  #unpackedBytes = 0;

  /**
   * @param mostBytes that all files together may unpack to.
   * @throws MeshError when the bytes are no complete archive.
   */
  constructor(bytes: Uint8Array, mostBytes: number = READ_LIMITS.unpackedBytes) {
    this.#bytes = bytes;
    this.#mostBytes = mostBytes;
    this.#data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.#readDirectory();
  }

  /** Name as it is written in the archive, or null; names in packages do not depend on capitals. */
  find(name: string): string | null {
    if (this.#entries.has(name)) return name;
    const small = name.toLowerCase();
    for (const key of this.#entries.keys()) if (key.toLowerCase() === small) return key;
    return null;
  }

  /**
   * Unpacks one file and hands its bytes over piece by piece.
   *
   * @throws MeshError when the file is damaged, encrypted or packed in an unknown way, or when it and those unpacked
   *   before are together larger than the limit, stated or found.
   */
  unpack(name: string, take: (piece: Uint8Array) => void): void {
    const entry = this.#entries.get(name);
    if (entry === undefined) throw new MeshError(`The package lacks the file ${name}.`, DAMAGED);
    if (entry.encrypted) {
      throw new MeshError(`${name} is encrypted.`, 'Save the file without a password.');
    }
    if (entry.method !== 0 && entry.method !== 8) {
      throw new MeshError(
        `${name} is packed by method ${entry.method}; stored (0) and deflate (8) are read.`,
        'Save the file again.',
      );
    }
    this.#refuseEnormous(name, entry.bytes);
    const packed = this.#packed(name, entry);
    let unpacked = 0;
    let sum = 0;
    const receive = (piece: Uint8Array): void => {
      unpacked += piece.length;
      if (unpacked > entry.bytes) {
        throw new MeshError(`${name} unpacks to more than the ${entry.bytes} bytes that it states.`, DAMAGED);
      }
      sum = checksum(sum, piece);
      if (piece.length > 0) take(piece);
    };
    if (entry.method === 0) receive(packed);
    else inflate(packed, name, receive);
    if (unpacked !== entry.bytes || sum !== entry.checksum) {
      throw new MeshError(`${name} does not unpack to what the package states of it.`, DAMAGED);
    }
    this.#unpackedBytes += unpacked;
  }

  #refuseEnormous(name: string, bytes: number): void {
    if (this.#unpackedBytes + bytes > this.#mostBytes) {
      throw new MeshError(
        `${name} would unpack to ${Math.round(bytes / 1e6).toLocaleString('en-GB')} MB; at most ${Math.floor(this.#mostBytes / 1e6)} MB are unpacked of one file.`,
        'Export the part with a coarser resolution, or as binary STL.',
      );
    }
  }

  #packed(name: string, entry: Entry): Uint8Array {
    const { headerAt } = entry;
    if (headerAt + 30 > this.#bytes.length || this.#data.getUint32(headerAt, true) !== LOCAL_HEADER) {
      throw new MeshError(`The package does not hold ${name} where it states.`, DAMAGED);
    }
    const start = headerAt + 30 + this.#short(headerAt + 26) + this.#short(headerAt + 28);
    if (start + entry.packedBytes > this.#bytes.length) {
      throw new MeshError(`The package ends within ${name}.`, DAMAGED);
    }
    return this.#bytes.subarray(start, start + entry.packedBytes);
  }

  #readDirectory(): void {
    const end = this.#findEnd();
    let count = this.#short(end + 10);
    let at = this.#long(end + 16);
    const wide = end - 20 >= 0 ? this.#wideEnd(end - 20) : null;
    if (wide !== null) {
      count = this.#wide(wide + 32);
      at = this.#wide(wide + 48);
    }
    if (count > READ_LIMITS.archiveEntries) {
      throw new MeshError(
        `The package holds ${count.toLocaleString('en-GB')} files; at most ${READ_LIMITS.archiveEntries.toLocaleString('en-GB')} are read.`,
        'Export the part again, by itself.',
      );
    }
    for (let index = 0; index < count; index++) at = this.#readEntry(at, end);
  }

  /** Reads one entry of the directory and returns where the next one begins. */
  #readEntry(at: number, end: number): number {
    if (at + 46 > end || this.#data.getUint32(at, true) !== DIRECTORY_ENTRY) {
      throw new MeshError('The directory of the package is broken.', DAMAGED);
    }
    const nameBytes = this.#short(at + 28);
    const extraBytes = this.#short(at + 30);
    const next = at + 46 + nameBytes + extraBytes + this.#short(at + 32);
    if (next > end) throw new MeshError('The directory of the package is broken.', DAMAGED);
    const sizes = [this.#long(at + 24), this.#long(at + 20), this.#long(at + 42)];
    this.#widen(sizes, at + 46 + nameBytes, extraBytes);
    const [bytes = 0, packedBytes = 0, headerAt = 0] = sizes;
    const name = strFromU8(this.#bytes.subarray(at + 46, at + 46 + nameBytes)).replace(/^\//, '');
    this.#entries.set(name, {
      method: this.#short(at + 10),
      encrypted: (this.#short(at + 8) & 1) === 1,
      checksum: this.#long(at + 16),
      packedBytes,
      bytes,
      headerAt,
    });
    return next;
  }

  /** Puts 64-bit values in the place of those that say so: extra field 1, APPNOTE section 4.5.3. */
  #widen(values: number[], start: number, length: number): void {
    let at = start;
    while (at + 4 <= start + length) {
      const fieldEnd = at + 4 + this.#short(at + 2);
      if (this.#short(at) === 1) {
        let from = at + 4;
        for (let index = 0; index < values.length; index++) {
          if (values[index] !== 0xffffffff || from + 8 > fieldEnd) continue;
          values[index] = this.#wide(from);
          from += 8;
        }
      }
      at = fieldEnd;
    }
  }

  #findEnd(): number {
    const last = this.#bytes.length - 22;
    for (let at = last; at >= 0 && at >= last - 0xffff; at--) {
      if (this.#data.getUint32(at, true) === END_OF_DIRECTORY) return at;
    }
    throw new MeshError('The file begins as a 3MF package and has no end of one.', DAMAGED);
  }

  /** Where the 64-bit end of the directory is, when a locator of one stands here; else null. */
  #wideEnd(locatorAt: number): number | null {
    if (this.#data.getUint32(locatorAt, true) !== 0x07064b50) return null;
    const at = this.#wide(locatorAt + 8);
    const there = at + 56 <= locatorAt && this.#data.getUint32(at, true) === END_OF_DIRECTORY_64;
    return there ? at : null;
  }

  #short(at: number): number {
    return at + 2 <= this.#bytes.length ? this.#data.getUint16(at, true) : 0;
  }

  #long(at: number): number {
    return this.#data.getUint32(at, true);
  }

  #wide(at: number): number {
    return at + 8 <= this.#bytes.length ? Number(this.#data.getBigUint64(at, true)) : Number.MAX_SAFE_INTEGER;
  }
}

function inflate(packed: Uint8Array, name: string, receive: (piece: Uint8Array) => void): void {
  const inflater = new Inflate((piece) => receive(piece));
  try {
    for (let at = 0; at < packed.length; at += PIECE_BYTES) {
      inflater.push(packed.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= packed.length);
    }
  } catch (error) {
    if (error instanceof MeshError) throw error;
    throw new MeshError(
      `${name} cannot be unpacked (${error instanceof Error ? error.message : String(error)}).`,
      DAMAGED,
    );
  }
}
