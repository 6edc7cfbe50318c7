export { regularizedBeta } from './beta.ts';
export { betaQuantile, fQuantile } from './beta-quantile.ts';
export { binomialCumulative } from './binomial.ts';
export { gammaFunction, logGamma } from './gamma.ts';
export { chiSquareQuantile, gammaQuantile } from './gamma-quantile.ts';
export { InverseTable } from './inverse-table.ts';
export { inverseNormal, normalCumulative } from './normal.ts';
export { studentCumulative, studentQuantile } from './student.ts';
export { sum } from './sum.ts';
