export { BuildPacker } from './build-packer.ts';
export { BuildTimer } from './build-timer.ts';
export { checkBuildTimeModel } from './check-build-time-model.ts';
export { type DepositedVolume, depositedVolume } from './deposited-volume.ts';
export { layerCount } from './layer-count.ts';
export { type PowderOfBuild, powderOfBuild } from './powder-of-build.ts';
export { type Dimensions, shapeOfDimensions } from './shape-of-dimensions.ts';
