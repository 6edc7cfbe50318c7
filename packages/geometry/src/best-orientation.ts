import type { PartShape } from '@buildweek/model';
import type { Mesh } from './mesh.ts';
import { orientationReason } from './orientation-reason.ts';
import { type Orientation, orientations } from './orientations.ts';
import type { OrientedPart, Process } from './oriented-part.ts';
import { type MeasureOptions, restingPart, USUAL_OVERHANG_ANGLE } from './part-measures.ts';

/** Room of a machine for one part, mm. */
export interface BuildLimits {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

/** The orientation that was chosen, and why. */
export interface OrientationChoice {
  readonly best: OrientedPart;
  /** The orientation of the file. */
  readonly given: OrientedPart;
  /** One sentence for readers who run a lab. */
  readonly reason: string;
  /** All that were tried, best first. */
  readonly tried: readonly OrientedPart[];
}

/**
 * What counts for the score of an orientation: supports as supported volume over supported and part volume; height
 * over the largest height that was tried; platform rectangle over the largest one; and one unit where the part does
 * not stand firmly. Common practice, no source: extrusion saves supports first, then layers, then platform; resin is
 * held by supports anyway and takes its time from the layers; powder carries the part, and the powder should be filled
 * least high.
 */
export const ORIENTATION_WEIGHTS: Readonly<
  Record<
    Process,
    {
      readonly supports: number;
      readonly height: number;
      readonly platform: number;
      readonly unsteadiness: number;
    }
  >
> = {
  MEX: { supports: 0.6, height: 0.25, platform: 0.15, unsteadiness: 0.3 },
  VPP: { supports: 0.5, height: 0.4, platform: 0.1, unsteadiness: 0 },
  PBF: { supports: 0, height: 0.9, platform: 0.1, unsteadiness: 0 },
};

/** A part that rests with less than this share of its footprint does not stand firmly. Common practice, no source. */
const FIRM_SHARE = 0.01;
/** The file's own orientation is kept unless another one is better by this much of the score. */
const WORTHWHILE_GAIN = 0.005;

/** A side may be longer than the build space by this, mm: the corners in a file are rounded, and turning rounds again. */
const SAME_LENGTH = 0.0005;

/** Orientations of a mesh already measured, by overhang angle: three processes ask for the same ones. */
const measured = new WeakMap<Mesh, Map<number, readonly Candidate[]>>();

interface Candidate {
  readonly orientation: Orientation;
  readonly shape: PartShape;
  readonly isFirm: boolean;
}

/**
 * The best of `orientations` for a process. With limits, one that fits is taken before all that do not; when none
 * fits, the best all the same, with `best.fits` false.
 *
 * @throws MeshError when the part encloses no volume.
 */
export function bestOrientation(
  mesh: Mesh,
  process: Process,
  limits: BuildLimits | null = null,
  options: MeasureOptions = {},
): OrientationChoice {
  const candidates = candidatesOf(mesh, options.overhangAngle ?? USUAL_OVERHANG_ANGLE);
  const shapes = candidates.map(({ shape }) => (process === 'PBF' ? unsupported(shape) : shape));
  const highest = Math.max(...shapes.map(({ height }) => height));
  const widest = Math.max(...shapes.map(({ width, depth }) => width * depth));
  const weights = ORIENTATION_WEIGHTS[process];
  const parts = candidates.map(({ orientation, isFirm }, index): OrientedPart => {
    const shape = shapes[index];
    const score =
      (weights.supports * shape.supportedVolume) / (shape.supportedVolume + shape.volume) +
      (weights.height * shape.height) / highest +
      (weights.platform * shape.width * shape.depth) / widest +
      (isFirm ? 0 : weights.unsteadiness);
    return { orientation, shape, isFirm, fits: limits === null || fits(shape, limits), score };
  });
  const given = parts[0];
  const tried = [...parts].sort(
    (one, other) => Number(other.fits) - Number(one.fits) || one.score - other.score,
  );
  const first = tried[0];
  const isWorthwhile = first.fits !== given.fits || first.score < given.score - WORTHWHILE_GAIN;
  const best = isWorthwhile ? first : given;
  return { best, given, reason: orientationReason(best, given, tried, process), tried };
}

function candidatesOf(mesh: Mesh, overhangAngle: number): readonly Candidate[] {
  const byAngle = measured.get(mesh) ?? new Map<number, readonly Candidate[]>();
  measured.set(mesh, byAngle);
  const known = byAngle.get(overhangAngle);
  if (known !== undefined) return known;
  const candidates = orientations(mesh).map((orientation): Candidate => {
    const { shape, restingArea, isFirm } = restingPart(mesh, orientation.rotation, { overhangAngle });
    return { orientation, shape, isFirm: isFirm && restingArea >= FIRM_SHARE * shape.footprint };
  });
  byAngle.set(overhangAngle, candidates);
  return candidates;
}

/** The shape where nothing needs support. */
function unsupported(shape: PartShape): PartShape {
  return { ...shape, overhangArea: 0, supportedVolume: 0, supportContactArea: 0 };
}

function fits({ width, depth, height }: PartShape, limits: BuildLimits): boolean {
  const goesInto = (side: number, limit: number): boolean => side <= limit + SAME_LENGTH;
  if (!goesInto(height, limits.height)) return false;
  return (
    (goesInto(width, limits.width) && goesInto(depth, limits.depth)) ||
    (goesInto(depth, limits.width) && goesInto(width, limits.depth))
  );
}
