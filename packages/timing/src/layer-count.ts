import { checkNotNegative, checkPositive } from './checks.ts';
import { SAME_LENGTH } from './lengths.ts';

/**
 * How many whole layers a height takes. What is higher than whole layers by less than half a micrometre takes no
 * further one: 0.54 / 0.06 is 9.000000000000002 in floating point, and a mesh carries errors of that kind as well.
 * @param height mm; 0 takes no layer, anything else at least one
 * @param layer thickness of a layer, mm
 * @throws RangeError when the height is negative or the layer not above 0
 */
export function layerCount(height: number, layer: number): number {
  checkNotNegative('height', height);
  checkPositive('layer thickness', layer);
  if (height === 0) return 0;
  return Math.max(1, Math.ceil((height - SAME_LENGTH) / layer));
}
