import type { Distribution } from './distribution.ts';

/**
 * How long a print takes for what is in it: one model for each kind of process. Rates are mm3/s and mm2/s, layers
 * mm, times s.
 */
export type BuildTimeModel = ExtrusionTime | MaskTime | LaserVatTime | PowderBedTime | VolumeAndHeightTime;

/** MEX: deposited volume over an effective rate, and time for every layer of every piece. */
export interface ExtrusionTime {
  readonly kind: 'extrusion';
  readonly layer: number;
  /** Volume that is laid down in a second, travel and acceleration included. */
  readonly rate: number;
  readonly secondsPerLayer: number;
  /** Thickness of the solid walls, and of the solid skins at top and bottom, mm. */
  readonly wallThickness: number;
  readonly skinThickness: number;
  /** Share of the inside that is filled, 0 to 1. */
  readonly infillShare: number;
  /** Share of the supported volume that is laid down as supports, 0 to 1. */
  readonly supportShare: number;
}

/** VPP with a mask: layers of the tallest part, whatever the number of parts. */
export interface MaskTime {
  readonly kind: 'mask';
  readonly layer: number;
  readonly secondsPerLayer: number;
  /** First layers, exposed longer. */
  readonly bottomLayers: number;
  /** Further seconds for each of them, on top of `secondsPerLayer`. */
  readonly secondsPerBottomLayer: number;
}

/** VPP with a laser: recoating of every layer, and the scanned area. */
export interface LaserVatTime {
  readonly kind: 'laser vat';
  readonly layer: number;
  readonly secondsPerLayer: number;
  /** Area that is scanned in a second. */
  readonly scanRate: number;
}

/** PBF: recoating of every layer of the part cake, and the scanned area. */
export interface PowderBedTime {
  readonly kind: 'powder bed';
  readonly layer: number;
  readonly secondsPerLayer: number;
  readonly scanRate: number;
  /** Height of plain powder below and above the parts together, mm. */
  readonly bedding: number;
}

/** A form that any process can be fitted with: hours per build, per cm3 of part and per cm of height. */
export interface VolumeAndHeightTime {
  readonly kind: 'volume and height';
  readonly hoursPerBuild: number;
  readonly hoursPerCubicCentimetre: number;
  readonly hoursPerCentimetre: number;
}

/** Where parts are put in a build. Lengths are mm. */
export type BuildSpace =
  /** Parts stand side by side; they may be turned by quarter turns about z. */
  | {
      readonly kind: 'platform';
      readonly width: number;
      readonly depth: number;
      readonly height: number;
      /** Left free along every edge. */
      readonly margin: number;
      /** Left free between two parts. */
      readonly spacing: number;
    }
  /** Parts are stacked in the powder; how high the cake gets follows from their boxes and volumes. */
  | {
      readonly kind: 'powder bed';
      readonly width: number;
      readonly depth: number;
      /** For the parts; bedding comes on top. */
      readonly height: number;
      readonly margin: number;
      readonly spacing: number;
      /** At most this share of the cake is part, 0 to 1. */
      readonly packingDensity: number;
      /** Share of the cake that the bounding boxes of the parts, with their spacing, can take, 0 to 1. */
      readonly boxShare: number;
    };

/** A machine whose builds are packed and timed from the shapes of their parts. */
export interface ShapedBuilds {
  readonly space: BuildSpace;
  readonly time: BuildTimeModel;
  /** What the true print time is of the estimated one: a factor, one draw for each build. */
  readonly timeFactor: Distribution;
  /** Further hours of cool-down for each mm of the height of the build. */
  readonly coolDownHoursPerMillimetre: number;
  /** Null for processes without powder. */
  readonly powder: PowderUse | null;
}

/** Powder that a build takes, and what is left of it. Densities are g/cm3. */
export interface PowderUse {
  readonly bedDensity: number;
  readonly partDensity: number;
  /** Share of virgin powder in what a build is filled with, 0 to 1; the rest is used powder. */
  readonly virginShare: number;
}
