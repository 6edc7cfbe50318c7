import type { BuildTimeModel, PartShape, Process } from '@buildweek/model';
import { VAT_SUPPORT_SHARE } from './build-timer.ts';
import { depositedVolume } from './deposited-volume.ts';

/**
 * Volume of material that stays in one piece and its supports, mm3, by the same sums as the print time: what extrusion
 * lays down; in a vat the solid and thin supports; in powder the solid alone. Where a print time was fitted without
 * walls and infill, the piece counts as solid, which is too much for extrusion.
 * Source: the parts of the sum are common practice, no source.
 */
export function materialVolume(process: Process, model: BuildTimeModel, shape: PartShape): number {
  if (model.kind === 'extrusion') return depositedVolume(model, shape).total;
  return process === 'VPP' ? shape.volume + VAT_SUPPORT_SHARE * shape.supportedVolume : shape.volume;
}
