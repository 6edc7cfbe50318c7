import type { BuildTimeModel, PartShape } from '@buildweek/model';
import { checkBuildTimeModel } from './check-build-time-model.ts';
import { depositedVolume } from './deposited-volume.ts';
import { layerCount } from './layer-count.ts';

const SECONDS_PER_HOUR = 3600;
const CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE = 1000;
const MILLIMETRES_PER_CENTIMETRE = 10;

/**
 * Share of the supported volume that a laser hardens as supports in a vat: thin columns.
 * Common practice, no source: 0.02 low, 0.05 typical, 0.15 high.
 */
export const VAT_SUPPORT_SHARE = 0.05;

/**
 * Print hours of builds of one process, from what is in them. Warm-up, cool-down and all that people do are not in.
 *
 * Each process has its own sum; all are forms of I. Gibson, D. Rosen and B. Stucker, Additive Manufacturing
 * Technologies, section 16.6.2 (time for scanning or depositing, plus time for every layer):
 *
 * - extrusion: for every piece, deposited volume / rate + layers of the piece x seconds per layer;
 * - mask: layers of the highest part x seconds per layer + first layers x further seconds of each of them;
 * - laser vat: layers of the highest part x seconds per layer + hardened volume / layer / scan rate;
 * - powder bed: layers of parts and bedding x seconds per layer + volume of the parts / layer / scan rate;
 * - volume and height: hours per build + hours per cm3 x volume + hours per cm x height (I. Kucukkoc, Computers and
 *   Operations Research 105, 2019).
 */
export class BuildTimer {
  private readonly secondsPerPiece: Float64Array;
  private readonly layer: number;
  private readonly secondsPerLayer: number;
  private readonly bedding: number;
  private readonly firstLayers: number;
  private readonly furtherSecondsPerFirstLayer: number;
  private readonly secondsPerBuild: number;
  private readonly secondsPerMillimetre: number;

  /** @throws RangeError when a number of the model is not possible */
  constructor(model: BuildTimeModel, shapes: readonly PartShape[]) {
    checkBuildTimeModel(model);
    this.secondsPerPiece = Float64Array.from(shapes, (shape) => secondsPerPiece(model, shape));
    const isLayered = model.kind === 'mask' || model.kind === 'laser vat' || model.kind === 'powder bed';
    const isByHeight = model.kind === 'volume and height';
    this.layer = isLayered ? model.layer : 0;
    this.secondsPerLayer = isLayered ? model.secondsPerLayer : 0;
    this.bedding = model.kind === 'powder bed' ? model.bedding : 0;
    this.firstLayers = model.kind === 'mask' ? model.bottomLayers : 0;
    this.furtherSecondsPerFirstLayer = model.kind === 'mask' ? model.secondsPerBottomLayer : 0;
    this.secondsPerBuild = isByHeight ? model.hoursPerBuild * SECONDS_PER_HOUR : 0;
    this.secondsPerMillimetre = isByHeight
      ? (model.hoursPerCentimetre * SECONDS_PER_HOUR) / MILLIMETRES_PER_CENTIMETRE
      : 0;
  }

  /**
   * Hours that a build prints.
   * @param counts pieces of each shape, in the order of the shapes
   * @param height height of the build as the packer tells it, mm: of the highest part, or of the parts in the powder
   */
  printHours(counts: Int32Array, height: number): number {
    let seconds = this.secondsPerBuild + this.secondsPerMillimetre * height;
    for (let shape = 0; shape < counts.length; shape++)
      seconds += counts[shape] * this.secondsPerPiece[shape];
    if (this.layer > 0) {
      const layers = layerCount(height + this.bedding, this.layer);
      seconds += layers * this.secondsPerLayer;
      seconds += Math.min(layers, this.firstLayers) * this.furtherSecondsPerFirstLayer;
    }
    return seconds / SECONDS_PER_HOUR;
  }
}

/** Seconds that every piece adds to a build. */
function secondsPerPiece(model: BuildTimeModel, shape: PartShape): number {
  switch (model.kind) {
    case 'extrusion':
      return (
        depositedVolume(model, shape).total / model.rate +
        layerCount(shape.height, model.layer) * model.secondsPerLayer
      );
    case 'mask':
      return 0;
    case 'laser vat':
      return (shape.volume + VAT_SUPPORT_SHARE * shape.supportedVolume) / model.layer / model.scanRate;
    case 'powder bed':
      return shape.volume / model.layer / model.scanRate;
    case 'volume and height':
      return (
        (model.hoursPerCubicCentimetre * SECONDS_PER_HOUR * shape.volume) /
        CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE
      );
  }
}
