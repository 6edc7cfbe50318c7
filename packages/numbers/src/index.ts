export { regularizedBeta } from './beta.ts';
export { gammaFunction, logGamma } from './gamma.ts';
export { InverseTable } from './inverse-table.ts';
export { inverseNormal, normalCumulative } from './normal.ts';
export {
  betaQuantile,
  chiSquareQuantile,
  gammaQuantile,
  studentCumulative,
  studentQuantile,
} from './quantiles.ts';
