import type { PartShape } from '@buildweek/model';
import type { Orientation } from './orientations.ts';

/** Kinds of processes, words of ISO/ASTM 52900: extrusion, vat photopolymerization, powder bed fusion. */
export type Process = 'MEX' | 'VPP' | 'PBF';

/** A part in one orientation as it would be built. */
export interface OrientedPart {
  readonly orientation: Orientation;
  readonly shape: PartShape;
  /** Rests on the platform with at least a hundredth of its footprint, its centre of gravity well above that. */
  readonly isFirm: boolean;
  /** Whether it fits the limits, turned by a quarter about the vertical where that helps. */
  readonly fits: boolean;
  /** Smaller is better; what goes into it stands at `ORIENTATION_WEIGHTS`. */
  readonly score: number;
}
