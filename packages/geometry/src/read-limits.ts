import { MeshError } from './mesh-error.ts';

/** What a mesh file may hold at most, so that a broken or hostile file cannot exhaust the memory. */
export const READ_LIMITS = {
  /** Triangles, and vertices too, of one mesh. */
  triangles: 10_000_000,
  /** Bytes that the parts of a 3MF file may unpack to, together. */
  unpackedBytes: 512 * 1024 * 1024,
  /** Bytes of an ASCII STL file: it is held as one string, and engines end somewhat above this. */
  textBytes: 500_000_000,
  /** Distance of a corner from the origin along each axis, mm (ten kilometres). */
  coordinate: 1e7,
  /** Files in one 3MF package. */
  archiveEntries: 10_000,
  /** Components within components. */
  componentDepth: 64,
} as const;

/** @throws MeshError when there are more triangles than one mesh may hold. */
export function refuseTooMany(count: number, what: string): void {
  if (count > READ_LIMITS.triangles) {
    throw new MeshError(
      `The file holds ${Number.isFinite(count) ? count.toLocaleString('en-GB') : 'too many'} ${what}; at most ${READ_LIMITS.triangles.toLocaleString('en-GB')} are read.`,
      'Export the part with a coarser resolution.',
    );
  }
}

/** Whether the coordinates, mm, are numbers within what is read. */
export function isPlace(x: number, y: number, z: number): boolean {
  const far = READ_LIMITS.coordinate;
  return Math.abs(x) <= far && Math.abs(y) <= far && Math.abs(z) <= far;
}

/** Refuses a corner that is not a place in a part: a coordinate is no number, or lies beyond all that is printed. */
export function refusePlace(x: number, y: number, z: number, where: string): never {
  throw new MeshError(
    `${where} has a corner at (${x}, ${y}, ${z}) mm, which is no place in a part.`,
    'The file is damaged, is no mesh or has another unit: export the part again and check the unit.',
  );
}
