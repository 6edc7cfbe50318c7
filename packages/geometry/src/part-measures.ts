import type { PartShape } from '@buildweek/model';
import { columnsOf } from './columns.ts';
import { layerAreas } from './layer-areas.ts';
import type { Mesh } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { type OrientedMesh, orientedMesh, type Rotation } from './oriented-mesh.ts';
import { type Solid, solidOf } from './solid.ts';
import { standsFirmly } from './stability.ts';
import { columnMeasures, downwardFaces } from './supports.ts';

/** Slabs that a part is cut into for its layer areas. */
export const SLABS = 64;

/**
 * Faces at a smaller angle to the platform than this need support, degrees. Common practice, no source: 45 degrees
 * for extruded plastics and for resin.
 */
export const USUAL_OVERHANG_ANGLE = 45;

/** How a part is to be measured. */
export interface MeasureOptions {
  /**
   * Downward faces at a smaller angle to the platform need support, degrees from 0 (no supports, as in a powder bed)
   * to 90.
   */
  readonly overhangAngle?: number;
}

/** The shape of a part and how it rests on the platform. */
export interface RestingPart {
  readonly shape: PartShape;
  /** Area that lies on the platform, mm2. */
  readonly restingArea: number;
  /** Whether the centre of gravity stays above the box of what lies on the platform when the part leans a little. */
  readonly isFirm: boolean;
}

/**
 * Measures a part as it stands when it is turned so. The mesh is closed and faces outwards (`inspectMesh` mends what
 * can be mended).
 *
 * Exact for the mesh: box, volume (voids subtracted), surface, layer areas, area of overhangs. By a grid of some
 * 65,000 vertical lines over the box: footprint, supported volume, and the part of the support contact that stands on
 * the part. Their error is that of counting cells along an outline: outlines along x and y are met exactly, others to
 * about half a cell times the square root of the number of cells along the outline; 0.1 % for the footprint of a
 * ball. Volume and layers where shells overlap count once, also by the grid; surface counts what is inside too.
 * Bridges and overhangs too small to need support are counted, so supports are estimated high.
 *
 * @throws MeshError when the part encloses no volume.
 * @throws RangeError when the angle is not from 0 to 90 degrees.
 */
export function measure(mesh: Mesh, rotation: Rotation, options: MeasureOptions = {}): PartShape {
  return restingPart(mesh, rotation, options).shape;
}

/** As `measure`, with how the part rests. */
export function restingPart(mesh: Mesh, rotation: Rotation, options: MeasureOptions = {}): RestingPart {
  const angle = options.overhangAngle ?? USUAL_OVERHANG_ANGLE;
  if (!(angle >= 0 && angle <= 90)) {
    throw new RangeError(`The overhang angle is ${angle}; it must be from 0 to 90 degrees.`);
  }
  const part = orientedMesh(mesh, rotation);
  const solid = solidOf(mesh);
  refuseFlat(part, solid);
  const slope = -Math.cos((angle * Math.PI) / 180);
  const faces = downwardFaces(part, slope);
  const columns = columnMeasures(part, columnsOf(part, slope), SLABS);
  const areas = layerAreas(part, SLABS);
  const shape: PartShape = {
    width: part.width,
    depth: part.depth,
    height: part.height,
    volume: solid.volume - columns.overlapVolume,
    surface: solid.surface,
    footprint: columns.footprint,
    overhangArea: faces.overhangArea,
    supportedVolume: columns.supportedVolume,
    supportContactArea: faces.overhangArea + columns.standingArea,
    layerAreas: Array.from(areas, (area, slab) => Math.max(0, area - columns.overlapAreas[slab])),
  };
  return { shape, restingArea: faces.restingArea, isFirm: standsFirmly(mesh, rotation, part, solid) };
}

function refuseFlat(part: OrientedMesh, solid: Solid): void {
  const box = part.width * part.depth * part.height;
  if (box > 0 && solid.volume > 1e-9 * box) return;
  throw new MeshError(
    `The mesh encloses no volume (its box is ${[part.width, part.depth, part.height].map((side) => Number(side.toPrecision(3))).join(' x ')} mm).`,
    'Give the surface a thickness, or export the solid body.',
  );
}
