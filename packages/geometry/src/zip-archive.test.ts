import { deflateSync, strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { checksum } from './checksum.ts';
import { MeshError } from './mesh-error.ts';
import { type ArchivedFile, archiveOf, stored } from './test-data/archive.ts';
import { ZipArchive } from './zip-archive.ts';

const TEXT = 'a line that repeats itself\n'.repeat(5000);

function unpacked(archive: Uint8Array, name: string): string {
  const pieces: number[] = [];
  new ZipArchive(archive).unpack(name, (piece) => {
    for (const byte of piece) pieces.push(byte);
  });
  return new TextDecoder().decode(Uint8Array.from(pieces));
}

function deflated(name: string, text: string, changes: Partial<ArchivedFile> = {}): ArchivedFile {
  const bytes = strToU8(text);
  return {
    name,
    packed: deflateSync(bytes),
    method: 8,
    statedBytes: bytes.length,
    statedSum: checksum(0, bytes),
    ...changes,
  };
}

describe('A ZIP archive', () => {
  test('of another library gives its files back, stored or deflated', () => {
    const archive = zipSync({
      'a.txt': [strToU8(TEXT), { level: 9 }],
      'b/c.txt': [strToU8(TEXT), { level: 0 }],
    });
    expect(unpacked(archive, 'a.txt')).toBe(TEXT);
    expect(unpacked(archive, 'b/c.txt')).toBe(TEXT);
  });

  test('may state sizes and places in 64 bits', () => {
    const archive = archiveOf([stored('a.txt', 'one'), deflated('b.txt', TEXT)], true);
    expect(unpacked(archive, 'a.txt')).toBe('one');
    expect(unpacked(archive, 'b.txt')).toBe(TEXT);
  });

  test('finds names whatever their capitals', () => {
    const archive = new ZipArchive(archiveOf([stored('3D/3dmodel.model', 'x')]));
    expect(archive.find('3d/3DModel.model')).toBe('3D/3dmodel.model');
    expect(archive.find('3D/other.model')).toBeNull();
  });

  test('that states something enormous is refused before it is unpacked', () => {
    const archive = archiveOf([deflated('a', TEXT, { statedBytes: 3_000_000_000 })]);
    expect(() => unpacked(archive, 'a')).toThrow(
      'a would unpack to 3,000 MB; at most 536 MB are unpacked of one file.',
    );
  });

  test('whose files are enormous only together is refused at the one that is too much', () => {
    const half = new Uint8Array(3_000_000);
    const file = {
      packed: deflateSync(half, { level: 1 }),
      method: 8,
      statedBytes: half.length,
      statedSum: checksum(0, half),
    };
    const archive = new ZipArchive(
      archiveOf([
        { ...file, name: 'a' },
        { ...file, name: 'b' },
      ]),
      5_000_000,
    );
    let received = 0;
    const count = (piece: Uint8Array): void => {
      received += piece.length;
    };
    archive.unpack('a', count);
    expect(() => archive.unpack('b', count)).toThrow(
      'b would unpack to 3 MB; at most 5 MB are unpacked of one file.',
    );
    expect(received).toBe(half.length);
  });

  test('that unpacks to more than it states is refused before more is handed on', () => {
    const archive = archiveOf([deflated('a', TEXT, { statedBytes: 1000 })]);
    let received = 0;
    expect(() =>
      new ZipArchive(archive).unpack('a', (piece) => {
        received += piece.length;
      }),
    ).toThrow('a unpacks to more than the 1000 bytes that it states.');
    expect(received).toBeLessThanOrEqual(1000);
  });

  test.each([
    [
      'another sum',
      deflated('a', TEXT, { statedSum: 7 }),
      'a does not unpack to what the package states of it.',
    ],
    [
      'a larger size',
      deflated('a', TEXT, { statedBytes: TEXT.length + 1 }),
      'a does not unpack to what the package states of it.',
    ],
    [
      'bytes that are not deflated',
      deflated('a', TEXT, { packed: Uint8Array.from([255, 255, 255]) }),
      'a cannot be unpacked',
    ],
    [
      'a cut stream',
      deflated('a', TEXT, { packed: deflateSync(strToU8(TEXT)).slice(0, 40) }),
      /^a (cannot be unpacked|does not unpack)/,
    ],
    [
      'a password',
      deflated('a', TEXT, { encrypted: true }),
      'a is encrypted. Save the file without a password.',
    ],
    [
      'an unknown method',
      deflated('a', TEXT, { method: 14 }),
      'a is packed by method 14; stored (0) and deflate (8) are read.',
    ],
  ])('with %s is refused', (_what, file, message) => {
    expect(() => unpacked(archiveOf([file]), 'a')).toThrow(MeshError);
    expect(() => unpacked(archiveOf([file]), 'a')).toThrow(message);
  });

  test('of very many files is refused', () => {
    const files = Array.from({ length: 10_001 }, (_, index) => stored(`${index}`, ''));
    expect(() => new ZipArchive(archiveOf(files))).toThrow(
      'The package holds 10,001 files; at most 10,000 are read.',
    );
  });

  test('whose directory is broken is refused', () => {
    const archive = archiveOf([stored('a', 'x')]);
    const broken = archive.slice();
    broken[30 + 1 + 1] = 0;
    expect(() => new ZipArchive(broken)).toThrow('The directory of the package is broken.');
    expect(() => new ZipArchive(archive.subarray(0, archive.length - 1))).toThrow('has no end of one.');
  });
});
