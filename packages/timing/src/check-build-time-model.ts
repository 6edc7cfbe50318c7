import type { BuildTimeModel } from '@buildweek/model';
import { checkNotNegative, checkPositive, checkShare } from './checks.ts';

/** @throws RangeError when a number of the model is not possible */
export function checkBuildTimeModel(model: BuildTimeModel): void {
  if (model.kind === 'volume and height') {
    checkNotNegative('time per build', model.hoursPerBuild);
    checkNotNegative('time per cm3', model.hoursPerCubicCentimetre);
    checkNotNegative('time per cm of height', model.hoursPerCentimetre);
    return;
  }
  checkPositive('layer thickness', model.layer);
  checkNotNegative('time per layer', model.secondsPerLayer);
  switch (model.kind) {
    case 'extrusion':
      checkPositive('rate', model.rate);
      checkNotNegative('thickness of the walls', model.wallThickness);
      checkNotNegative('thickness of the skins', model.skinThickness);
      checkShare('infill share', model.infillShare);
      checkShare('support share', model.supportShare);
      return;
    case 'mask':
      checkNotNegative('number of bottom layers', model.bottomLayers);
      checkNotNegative('time per bottom layer', model.secondsPerBottomLayer);
      return;
    case 'laser vat':
      checkPositive('scan rate', model.scanRate);
      return;
    case 'powder bed':
      checkPositive('scan rate', model.scanRate);
      checkNotNegative('bedding', model.bedding);
  }
}
