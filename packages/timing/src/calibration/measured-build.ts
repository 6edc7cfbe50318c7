import { checkNotNegative, checkPositive } from '../checks.ts';

/**
 * One build of a lab as it was measured: sums over its pieces, and the hours it printed. Lengths are mm, areas mm2,
 * volumes mm3.
 */
export interface MeasuredBuild {
  readonly pieces: number;
  /** Volume of all parts. */
  readonly volume: number;
  /** Of the highest part; for a powder bed of all parts in the cake, without bedding. */
  readonly height: number;
  /** Print hours, without warm-up and cool-down. */
  readonly printHours: number;
  /** Only for extrusion: volume that was laid down, as weighed or as the slicer says; else it is worked out. */
  readonly deposited?: number;
  /** Only for extrusion: sum of the heights of all pieces; the height times the pieces when it is missing. */
  readonly heights?: number;
  /** Needed for extrusion, unless the deposited volume is there: surface and footprint of all parts. */
  readonly surface?: number;
  readonly footprint?: number;
  /** Volume between overhangs and what is below them; 0 when it is missing. */
  readonly supportedVolume?: number;
}

/** @throws RangeError when a number of the build is not possible; the message counts builds from 1 */
export function checkMeasuredBuild(build: MeasuredBuild, position: number): void {
  const of = (what: string): string => `${what} of measured build ${position + 1}`;
  checkPositive(of('number of pieces'), build.pieces);
  checkPositive(of('volume'), build.volume);
  checkPositive(of('height'), build.height);
  checkPositive(of('print time'), build.printHours);
  checkNotNegative(of('supported volume'), build.supportedVolume ?? 0);
  if (build.deposited !== undefined) checkPositive(of('deposited volume'), build.deposited);
  if (build.heights !== undefined) checkPositive(of('sum of heights'), build.heights);
  if (build.surface !== undefined) checkPositive(of('surface'), build.surface);
  if (build.footprint !== undefined) checkPositive(of('footprint'), build.footprint);
}
