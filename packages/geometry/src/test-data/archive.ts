import { strToU8 } from 'fflate';
import { checksum } from '../checksum.ts';

/** A file as an archive states it, true or not. */
export interface ArchivedFile {
  readonly name: string;
  /** Bytes as they stand in the archive. */
  readonly packed: Uint8Array;
  /** 0: stored, 8: deflated. */
  readonly method: number;
  readonly statedBytes: number;
  readonly statedSum: number;
  readonly encrypted?: boolean;
}

/** A file that is stored as it is, stated truly. */
export function stored(name: string, text: string): ArchivedFile {
  const packed = strToU8(text);
  return { name, packed, method: 0, statedBytes: packed.length, statedSum: checksum(0, packed) };
}

/** A ZIP archive put together field by field (APPNOTE 4.3), with sizes and places in 64 bits where asked for. */
export function archiveOf(files: readonly ArchivedFile[], wide = false): Uint8Array {
  const body: number[] = [];
  const directory: number[] = [];
  for (const file of files) {
    const headerAt = body.length;
    const name = [...strToU8(file.name)];
    const flags = file.encrypted === true ? 1 : 0;
    const sizes = [...u32(file.packed.length), ...u32(file.statedBytes)];
    const common = [...u16(flags), ...u16(file.method), ...u32(0), ...u32(file.statedSum)];
    body.push(...u32(0x04034b50), ...u16(20), ...common, ...sizes, ...u16(name.length), ...u16(0), ...name);
    for (const byte of file.packed) body.push(byte);
    const extra = wide
      ? [
          ...u16(9),
          ...u16(0),
          ...u16(1),
          ...u16(24),
          ...u64(file.statedBytes),
          ...u64(file.packed.length),
          ...u64(headerAt),
        ]
      : [];
    directory.push(...u32(0x02014b50), ...u16(45), ...u16(45), ...common);
    directory.push(...(wide ? [...u32(0xffffffff), ...u32(0xffffffff)] : sizes));
    directory.push(...u16(name.length), ...u16(extra.length), ...u16(0), ...u16(0), ...u16(0), ...u32(0));
    directory.push(...u32(wide ? 0xffffffff : headerAt), ...name, ...extra);
  }
  const start = body.length;
  const end: number[] = [];
  if (wide) {
    end.push(...u32(0x06064b50), ...u64(44), ...u16(45), ...u16(45), ...u32(0), ...u32(0));
    end.push(...u64(files.length), ...u64(files.length), ...u64(directory.length), ...u64(start));
    end.push(...u32(0x07064b50), ...u32(0), ...u64(start + directory.length), ...u32(1));
  }
  const count = u16(wide ? 0xffff : files.length);
  end.push(...u32(0x06054b50), ...u16(0), ...u16(0), ...count, ...count);
  end.push(...u32(wide ? 0xffffffff : directory.length), ...u32(wide ? 0xffffffff : start), ...u16(0));
  return Uint8Array.from([...body, ...directory, ...end]);
}

function u16(value: number): number[] {
  return [value & 255, (value >>> 8) & 255];
}

function u32(value: number): number[] {
  return [...u16(value & 0xffff), ...u16(value >>> 16)];
}

function u64(value: number): number[] {
  return [...u32(value >>> 0), ...u32(Math.floor(value / 2 ** 32))];
}
