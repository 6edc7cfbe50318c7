import { readFileSync, statSync } from 'node:fs';
import {
  AS_GIVEN,
  bestOrientation,
  inspectMesh,
  type Mesh,
  MeshError,
  measure,
  type Process,
  readMesh,
} from '@buildweek/geometry';
import type { ShapeAnswer, ShapeReader, ShapeRequest } from '@buildweek/scenario';
import { isFileError, reasonOf } from './read-file.ts';

/** Larger files are no part that a lab would be asked for: they are refused before they are read. */
const LARGEST_FILE = 1_000_000_000;

interface ReadFile {
  readonly mesh: Mesh;
  /** What was assumed, and what is wrong with the mesh. */
  readonly notes: readonly string[];
}

/**
 * Reads and measures the meshes that a scenario or a question names. A file is read once, whoever asks for it.
 *
 * @param placeOf where a file is that is named so
 * @throws what is neither the fault of a mesh nor of the file system
 */
export function meshReader(placeOf: (path: string) => string): ShapeReader {
  const known = new Map<string, ReadFile>();
  return (request) => {
    try {
      const key = `${request.unit} ${request.path}`;
      const file = known.get(key) ?? readOnce(placeOf(request.path), request);
      known.set(key, file);
      return shapeOf(file, request);
    } catch (error) {
      if (error instanceof MeshError) return { kind: 'refused', message: error.found, write: error.remedy };
      // Anything but the file system is a mistake of the program: it must not pass for one of the file.
      if (!isFileError(error)) throw error;
      const message = `Cannot read the mesh ${request.path}: ${reasonOf(error)}.`;
      return { kind: 'refused', message, write: 'Give the path of an STL or 3MF file.' };
    }
  };
}

function readOnce(place: string, { path, unit }: ShapeRequest): ReadFile {
  const size = statSync(place).size;
  if (size > LARGEST_FILE) {
    throw new MeshError(
      `${path} has ${Math.round(size / 1e6)} MB, more than is read.`,
      'Export the part with fewer triangles.',
    );
  }
  const { mesh, notes } = readMesh(readFileSync(place), path, unit === null ? {} : { unit });
  const inspected = inspectMesh(mesh);
  return { mesh: inspected.mesh, notes: [...notes, ...inspected.warnings, ...inspected.notes] };
}

function shapeOf({ mesh, notes }: ReadFile, { process, orientation, space }: ShapeRequest): ShapeAnswer {
  // A machine without a process says nothing of supports; extrusion is the one that needs them most.
  const kind: Process = process === 'other' ? 'MEX' : process;
  if (orientation === 'as given') {
    const shape = measure(mesh, AS_GIVEN, kind === 'PBF' ? { overhangAngle: 0 } : {});
    return { kind: 'shape', shape, reason: 'as it stands in the file', notes };
  }
  const { best, reason } = bestOrientation(mesh, kind, {
    width: space.width - 2 * space.margin,
    depth: space.depth - 2 * space.margin,
    height: space.height,
  });
  return { kind: 'shape', shape: best.shape, reason, notes };
}
