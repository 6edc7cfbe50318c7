import type { PartShape } from '@buildweek/model';

/** A solid box. */
export function block(width: number, depth: number, height: number): PartShape {
  return {
    width,
    depth,
    height,
    volume: width * depth * height,
    surface: 2 * (width * depth + (width + depth) * height),
    footprint: width * depth,
    overhangArea: 0,
    supportedVolume: 0,
    supportContactArea: 0,
    layerAreas: [],
  };
}

/** A flat piece of 10 mm for a rectangle in plan. */
export function plate(width: number, depth: number): PartShape {
  return block(width, depth, 10);
}
