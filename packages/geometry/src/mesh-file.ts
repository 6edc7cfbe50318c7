import { looksLikeAsciiStl, readAsciiStl } from './ascii-stl.ts';
import { announcedTriangles, binaryStlLength, isBinaryStl, readBinaryStl } from './binary-stl.ts';
import { type LengthUnit, MILLIMETRES_IN } from './length-unit.ts';
import { type Mesh, meshBounds } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { looksLikeZip, readThreeMf } from './three-mf.ts';

/** What was read from a mesh file. */
export interface MeshFile {
  readonly format: 'binary STL' | 'ASCII STL' | '3MF';
  /** In mm, equal vertices joined; defects are as they were in the file. */
  readonly mesh: Mesh;
  /** Unit of the lengths in the file. */
  readonly unit: LengthUnit;
  /** Whole sentences on what was assumed and what the file holds beside the part. */
  readonly notes: readonly string[];
}

/** How a mesh file is to be read. */
export interface ReadOptions {
  /** Unit of an STL file, which states none; mm when left out. */
  readonly unit?: LengthUnit;
}

/** A largest side outside of this range, mm, makes a wrong unit likely. Common practice, no source. */
const PLAUSIBLE_SIDE = { low: 5, high: 2000 } as const;

/** Beginnings of files that people give by mistake. */
const OTHER_FILES: readonly (readonly [RegExp, string])[] = [
  [/^ISO-10303-21/, 'a STEP file'],
  [/^ply\s/, 'a PLY file'],
  [/^%PDF/, 'a PDF document'],
  [/^\x89PNG|^\xff\xd8\xff|^GIF8/, 'a picture'],
  [/^(\xef\xbb\xbf)?\s*</, 'an XML or web document'],
];

/**
 * Reads an STL file, binary or ASCII, or a 3MF file. What kind of file it is follows from its content; the name is
 * for messages only.
 *
 * @throws MeshError when the file is no mesh, is damaged or cut off, is empty, or larger than is read.
 */
export function readMesh(bytes: Uint8Array, fileName: string, options: ReadOptions = {}): MeshFile {
  try {
    return read(bytes, fileName, options);
  } catch (error) {
    if (error instanceof MeshError) throw new MeshError(`${fileName}: ${error.found}`, error.remedy);
    throw error;
  }
}

function read(bytes: Uint8Array, fileName: string, options: ReadOptions): MeshFile {
  if (bytes.length === 0) throw new MeshError('The file is empty.', 'Export or copy it again.');
  if (looksLikeZip(bytes)) return threeMfFile(bytes, options);
  const unit = options.unit ?? 'mm';
  const scale = MILLIMETRES_IN[unit];
  if (isBinaryStl(bytes)) {
    return stlFile('binary STL', readBinaryStl(bytes, scale), unit, options, []);
  }
  if (looksLikeAsciiStl(bytes)) {
    return stlFile('ASCII STL', readAsciiStl(bytes, scale), unit, options, []);
  }
  refuseOtherFiles(bytes, fileName);
  const mesh = readBinaryStl(bytes, scale);
  const spare = bytes.length - binaryStlLength(announcedTriangles(bytes) ?? 0);
  return stlFile('binary STL', mesh, unit, options, [`${spare} bytes after the last triangle were ignored.`]);
}

function stlFile(
  format: MeshFile['format'],
  mesh: Mesh,
  unit: LengthUnit,
  options: ReadOptions,
  further: readonly string[],
): MeshFile {
  const notes = [...further];
  if (options.unit === undefined) notes.push('An STL file states no unit: the numbers were taken as mm.');
  notes.push(...sizeNotes(mesh));
  return { format, mesh, unit, notes };
}

function threeMfFile(bytes: Uint8Array, options: ReadOptions): MeshFile {
  const { mesh, unit, items, leftOut } = readThreeMf(bytes);
  const notes: string[] = [];
  if (mesh.triangles.length === 0) {
    throw new MeshError('The file holds no triangle.', 'Export the part again, with the body selected.');
  }
  if (options.unit !== undefined && options.unit !== unit) {
    notes.push(`The file states its unit, ${unit}; the unit ${options.unit} that was given is not used.`);
  }
  if (items > 1) {
    notes.push(
      `The file places ${items} items on the platform: they are measured together, as they stand, as one part. Export one of them alone to measure one piece.`,
    );
  }
  if (leftOut > 0) {
    notes.push(`${leftOut} objects of the file are supports or surfaces, not the part, and were left out.`);
  }
  notes.push(...sizeNotes(mesh));
  return { format: '3MF', mesh, unit, notes };
}

function sizeNotes(mesh: Mesh): string[] {
  const { low, high } = meshBounds(mesh);
  const side = Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  if (side >= PLAUSIBLE_SIDE.low && side <= PLAUSIBLE_SIDE.high) return [];
  const inches = Number((side * 25.4).toPrecision(3));
  const isLikely = side < PLAUSIBLE_SIDE.low && inches >= PLAUSIBLE_SIDE.low;
  const hint = isLikely ? ` If its numbers are inches, it is ${inches} mm.` : '';
  return [`The longest side is ${Number(side.toPrecision(3))} mm: check the unit of the file.${hint}`];
}

function refuseOtherFiles(bytes: Uint8Array, fileName: string): void {
  const start = String.fromCharCode(...bytes.subarray(0, 64));
  for (const [beginning, what] of OTHER_FILES) {
    if (!beginning.test(start)) continue;
    throw new MeshError(`The file is ${what}, no mesh.`, 'Export the part as STL or 3MF.');
  }
  const count = announcedTriangles(bytes);
  const isNamedStl = fileName.toLowerCase().endsWith('.stl');
  if (!isNamedStl && (count === null || count === 0 || binaryStlLength(count) > bytes.length)) {
    throw new MeshError('The file is neither STL nor 3MF.', 'Export the part as STL or 3MF.');
  }
}
