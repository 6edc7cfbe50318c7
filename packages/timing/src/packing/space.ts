import type { BuildSpace } from '@buildweek/model';
import { checkNotNegative, checkPositive } from '../checks.ts';

/** @throws RangeError when a size is not above 0, or the margins and the spacing leave nothing of the space */
export function checkSpace(space: BuildSpace): void {
  checkPositive(`width of the ${space.kind}`, space.width);
  checkPositive(`depth of the ${space.kind}`, space.depth);
  checkPositive(`height of the ${space.kind}`, space.height);
  checkNotNegative('margin', space.margin);
  checkNotNegative('spacing', space.spacing);
  const smaller = Math.min(space.width, space.depth);
  const usable = smaller - 2 * space.margin;
  if (usable <= 0) {
    throw new RangeError(
      `The ${space.kind} is ${smaller} mm across, and margins of ${space.margin} mm on both sides leave nothing of it.`,
    );
  }
  if (usable <= space.spacing) {
    throw new RangeError(
      `The ${space.kind} has ${usable} mm across between its margins, not more than the spacing of ${space.spacing} mm.`,
    );
  }
}
