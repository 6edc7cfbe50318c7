import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeAsciiStl } from './ascii-stl.ts';
import { writeBinaryStl } from './binary-stl.ts';
import { type LengthUnit, MILLIMETRES_IN } from './length-unit.ts';
import { MeshError } from './mesh-error.ts';
import { readMesh } from './mesh-file.ts';
import { inspectMesh } from './mesh-inspection.ts';
import { AS_GIVEN } from './oriented-mesh.ts';
import { measure } from './part-measures.ts';
import { solidOf } from './solid.ts';
import { box, icosphere, torus } from './test-data/shapes.ts';
import { writeThreeMf } from './three-mf-writer.ts';

const encoder = new TextEncoder();
const PART = box(10, 20, 30);
const FILES = [
  ['part.stl', writeBinaryStl(PART)],
  ['text.stl', writeAsciiStl(PART, 'part')],
  ['part.3mf', writeThreeMf(PART, 'part')],
] as const;

/** Reads as much as can be and returns the sentence of a refusal, or null. Any other error fails the test. */
function refusal(bytes: Uint8Array, name: string): string | null {
  try {
    const { mesh } = readMesh(bytes, name);
    for (const value of mesh.positions) expect(Number.isFinite(value)).toBe(true);
    measure(inspectMesh(mesh).mesh, AS_GIVEN);
    return null;
  } catch (error) {
    if (error instanceof MeshError) return error.message;
    throw error;
  }
}

describe('A mesh file', () => {
  test.each(FILES)('%s is known by its content, whatever its name', (name, bytes) => {
    expect(solidOf(readMesh(bytes, name).mesh).volume).toBeCloseTo(6000, 9);
    expect(solidOf(readMesh(bytes, 'unnamed').mesh).volume).toBeCloseTo(6000, 9);
  });

  // G11: 1 inch read as mm scales the volume by 25.4 cubed.
  test('of STL has the unit that is given, or mm, which is said', () => {
    const bytes = writeBinaryStl(PART);
    const assumed = readMesh(bytes, 'part.stl');
    expect(assumed.unit).toBe('mm');
    expect(assumed.notes).toEqual(['An STL file states no unit: the numbers were taken as mm.']);
    const inches = readMesh(bytes, 'part.stl', { unit: 'inch' });
    expect(inches.notes).toEqual([]);
    expect(solidOf(inches.mesh).volume / solidOf(assumed.mesh).volume).toBeCloseTo(16387.064, 6);
  });

  // G12; 3MF Core Specification 1.4.0, ST_Unit.
  test('knows the units of 3MF', () => {
    const expected: Record<LengthUnit, number> = {
      micron: 0.001,
      mm: 1,
      cm: 10,
      inch: 25.4,
      foot: 304.8,
      m: 1000,
    };
    expect(MILLIMETRES_IN).toEqual(expected);
  });

  test('of an unlikely size says so', () => {
    const small = readMesh(writeBinaryStl(icosphere(1)), 'ball.stl', { unit: 'micron' });
    expect(small.notes).toEqual(['The longest side is 0.002 mm: check the unit of the file.']);
    const inches = readMesh(writeBinaryStl(icosphere(1)), 'ball.stl', { unit: 'mm' });
    expect(inches.notes).toEqual([
      'The longest side is 2 mm: check the unit of the file. If its numbers are inches, it is 50.8 mm.',
    ]);
  });

  test('with bytes after its last triangle is read, and says so', () => {
    const bytes = new Uint8Array(700);
    bytes.set(writeBinaryStl(PART));
    expect(readMesh(bytes, 'part.stl').notes[0]).toBe('16 bytes after the last triangle were ignored.');
  });

  test.each([
    ['empty.stl', new Uint8Array(0), 'empty.stl: The file is empty. Export or copy it again.'],
    [
      'short.stl',
      new Uint8Array(83),
      'short.stl: The file has 83 bytes, and the header of a binary STL file alone has 84.',
    ],
    ['none.stl', new Uint8Array(84), 'none.stl: The file holds no triangle.'],
    [
      'photo.png',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]),
      'photo.png: The file is a picture, no mesh.',
    ],
    [
      'part.step',
      encoder.encode('ISO-10303-21;\nHEADER;'),
      'part.step: The file is a STEP file, no mesh. Export the part as STL or 3MF.',
    ],
    [
      'part.stl',
      encoder.encode('<!doctype html><title>Not found'),
      'part.stl: The file is an XML or web document, no mesh.',
    ],
    [
      'notes.txt',
      encoder.encode('The bracket is 60 mm wide. '.repeat(9)),
      'notes.txt: The file is neither STL nor 3MF.',
    ],
  ])('%s that is no mesh is refused with what it is', (name, bytes, message) => {
    expect(() => readMesh(bytes, name)).toThrow(message);
  });

  test('that claims more triangles than it has is refused with both numbers', () => {
    const bytes = writeBinaryStl(PART);
    new DataView(bytes.buffer).setUint32(80, 4_000_000_000, true);
    expect(() => readMesh(bytes, 'part.stl')).toThrow(
      'part.stl: The file announces 4,000,000,000 triangles and has room for 12. It is cut off or no STL file: export or copy it again.',
    );
  });

  test.each(FILES)(
    '%s that is cut off is refused, or read as the whole when nothing of the mesh is missing',
    (name, bytes) => {
      for (let length = 0; length < bytes.length; length++) {
        const cut = bytes.slice(0, length);
        let volume: number;
        try {
          volume = solidOf(readMesh(cut, name).mesh).volume;
        } catch (error) {
          expect(error).toBeInstanceOf(MeshError);
          continue;
        }
        expect(volume).toBeCloseTo(6000, 9);
      }
    },
  );

  // Processor time, which other work on the machine does not change much; alone it takes about half a second.
  test('of a million triangles is read, inspected and measured in less than three seconds of one processor', () => {
    const bytes = writeBinaryStl(torus(40, 12, 1000, 500));
    const before = process.cpuUsage();
    const { mesh } = readMesh(bytes, 'ring.stl');
    const inspection = inspectMesh(mesh);
    measure(inspection.mesh, AS_GIVEN);
    const { user, system } = process.cpuUsage(before);
    expect(inspection.triangles).toBe(1_000_000);
    expect((user + system) / 1e6).toBeLessThan(3);
  });

  test('of random bytes is refused in words, never a crash', () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 400 }),
        fc.constantFrom('a.stl', 'a.3mf', 'a'),
        (bytes, name) => {
          refusal(bytes, name);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('with random bytes in some places is refused in words or measured, never a crash', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FILES),
        fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 12 }),
        ([name, bytes], changes) => {
          const broken = bytes.slice();
          for (const [at, value] of changes) broken[at % broken.length] = value;
          const message = refusal(broken, name);
          if (message !== null) expect(message).toMatch(/[.)]$/);
        },
      ),
      { numRuns: 400 },
    );
  });
});
