import type { PartShape } from '@buildweek/model';
import { checkNotNegative, checkPositive } from './checks.ts';

/** What is typed about a part that has no mesh. Lengths are mm, areas mm2, volumes mm3. */
export interface Dimensions {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  readonly volume: number;
  readonly surface?: number;
  readonly supportedVolume?: number;
  readonly supportContactArea?: number;
}

/**
 * Share of the box in plan that the part covers, seen from above, when only dimensions are known.
 * Common practice, no source: 0.5 low, 0.8 typical, 1 high.
 */
const FOOTPRINT_SHARE = 0.8;

/**
 * Share of the footprint that hangs over something lower than 45 degrees allow.
 * Common practice, no source: 0 low, 0.15 typical, 0.4 high.
 */
const OVERHANG_SHARE = 0.15;

/**
 * Height of what is below an overhang, as a share of the height of the part.
 * Common practice, no source: 0.1 low, 0.4 typical, 0.8 high.
 */
const OVERHANG_HEIGHT_SHARE = 0.4;

/**
 * The shape of a part of which only dimensions are known.
 *
 * Surface, when it is not given: the box of the same proportions that has the volume of the part gives the least
 * surface it may have, and the surface of its bounding box what a hollow part of that box has on one side; the
 * larger of the two is taken (for a full box both are its surface).
 * Footprint, overhangs and supports are typical shares, marked "common practice, no source" where they are defined;
 * the volume is spread evenly over the height.
 * @throws RangeError when a size is not above 0, or the volume is larger than the box
 */
export function shapeOfDimensions(dimensions: Dimensions): PartShape {
  const { width, depth, height, volume } = dimensions;
  checkPositive('width', width);
  checkPositive('depth', depth);
  checkPositive('height', height);
  checkPositive('volume', volume);
  const box = width * depth * height;
  if (volume > box * (1 + Number.EPSILON * 8)) {
    throw new RangeError(
      `A volume of ${volume} mm3 is more than the box of ${width} x ${depth} x ${height} mm holds: ${box} mm3.`,
    );
  }
  const surface = dimensions.surface ?? 2 * (width * depth + (width + depth) * height);
  checkPositive('surface', surface);
  const footprint = Math.max(volume / height, FOOTPRINT_SHARE * width * depth);
  const isBox = volume > 0.999 * box;
  const overhangArea = isBox ? 0 : OVERHANG_SHARE * footprint;
  const supportedVolume =
    dimensions.supportedVolume ?? Math.min(box - volume, overhangArea * OVERHANG_HEIGHT_SHARE * height);
  checkNotNegative('supported volume', supportedVolume);
  const supportContactArea = dimensions.supportContactArea ?? overhangArea;
  checkNotNegative('area of support contact', supportContactArea);
  return {
    width,
    depth,
    height,
    volume,
    surface,
    footprint,
    overhangArea,
    supportedVolume,
    supportContactArea,
    layerAreas: [],
  };
}
