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

/** Lengths and volumes are typed with few digits; this is for the rounding of products. */
const ROUNDING = 1e-9;

/** A part that takes more than this share of its box is a box, and has no overhangs. */
const BOX_SHARE = 0.999;

/**
 * The shape of a part of which only dimensions are known. What is not given is estimated:
 *
 * - the surface is that of the box: a compact part has less, a hollow one more (0.6 low, 1 typical, 2 high, as shares
 *   of the box);
 * - the footprint is a typical share of the box in plan, and at least what the volume needs at this height;
 * - overhangs are a typical share of the footprint, and what lies below them a share of the height, at most what the
 *   box has left; a full box has none;
 * - supports touch the whole of the overhangs, where there are any;
 * - the volume is spread evenly over the height.
 *
 * The shares are common practice, no source.
 * @throws RangeError when a size is not above 0, the volume is larger than the box, or the surface is smaller than
 *   that of a sphere of the volume
 */
export function shapeOfDimensions(dimensions: Dimensions): PartShape {
  const { width, depth, height, volume } = dimensions;
  checkPositive('width', width);
  checkPositive('depth', depth);
  checkPositive('height', height);
  checkPositive('volume', volume);
  const box = width * depth * height;
  if (volume > box * (1 + ROUNDING)) {
    throw new RangeError(
      `A volume of ${volume} mm3 is more than a box of ${width} x ${depth} x ${height} mm holds (${box} mm3).`,
    );
  }
  const surface = dimensions.surface ?? 2 * (width * depth + (width + depth) * height);
  checkPositive('surface', surface);
  const sphere = Math.cbrt(36 * Math.PI * volume ** 2);
  if (surface < sphere * (1 - ROUNDING)) {
    throw new RangeError(
      `A surface of ${surface} mm2 is less than a sphere of ${volume} mm3 has (${Math.round(sphere)} mm2).`,
    );
  }
  const footprint = Math.min(width * depth, Math.max(volume / height, FOOTPRINT_SHARE * width * depth));
  const overhangArea =
    volume > BOX_SHARE * box || dimensions.supportedVolume === 0 ? 0 : OVERHANG_SHARE * footprint;
  const supportedVolume =
    dimensions.supportedVolume ??
    Math.min(Math.max(0, box - volume), overhangArea * OVERHANG_HEIGHT_SHARE * height);
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
