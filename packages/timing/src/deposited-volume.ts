import type { ExtrusionTime, PartShape } from '@buildweek/model';

/** What is laid down for one piece, mm3. */
export interface DepositedVolume {
  readonly walls: number;
  /** At top and bottom. */
  readonly skins: number;
  readonly infill: number;
  readonly supports: number;
  readonly total: number;
}

/**
 * Volume that extrusion lays down for one piece.
 *
 * The skins cover what faces up and down, taken as twice the footprint (a hole that is bridged inside is not seen);
 * the walls cover the rest of the surface. Each is its area times its thickness; a part that is too thin for them is
 * solid. Of what is left inside, the infill share is laid down, and of the supported volume the support share.
 * The area times the thickness counts the edges twice: for a cube of 20 mm with walls of 0.8 mm that is 8 % more
 * walls and skins than there are, and about 4 % more in all.
 * Source: the parts of the sum are common practice, no source; for the box it is elementary.
 */
export function depositedVolume(
  model: ExtrusionTime,
  shape: Pick<PartShape, 'volume' | 'surface' | 'footprint' | 'supportedVolume'>,
): DepositedVolume {
  const { volume, surface, footprint } = shape;
  const skinArea = Math.min(2 * footprint, surface);
  const walls = (surface - skinArea) * model.wallThickness;
  const skins = skinArea * model.skinThickness;
  const solid = walls + skins;
  const limit = solid > volume ? volume / solid : 1;
  const infill = Math.max(0, volume - solid) * model.infillShare;
  const supports = shape.supportedVolume * model.supportShare;
  const inPart = Math.min(volume, solid + infill);
  return { walls: walls * limit, skins: skins * limit, infill, supports, total: inPart + supports };
}
