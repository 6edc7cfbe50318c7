export { optimalAllocation } from './allocation.ts';
export { autocorrelation, vonNeumannRatio } from './autocorrelation.ts';
export { batchMeans } from './batch-means.ts';
export { individualLevel, pairedDifferences, simultaneousCriticalValue } from './bonferroni.ts';
export {
  type CandidateReport,
  type CheapestFeasible,
  type CheapestFeasibleSettings,
  type ConstraintReport,
  cheapestFeasible,
  type ObserveConstraints,
} from './cheapest-feasible.ts';
export { type Difference, type PairedDifference, pairedDifference, welchDifference } from './comparison.ts';
export { type ChiSquareFit, chiSquareFit } from './counts/chi-square-fit.ts';
export {
  type Dispersion,
  dispersionAbout,
  dispersionTest,
  fitNegativeBinomial,
  type NegativeBinomial,
  negativeBinomialShapeByMoments,
  poissonLogLikelihood,
} from './counts/dispersion.ts';
export { type ExponentialTrend, exponentialTrend, sharesOfTrend } from './counts/exponential-trend.ts';
export { type CountedEvents, shrunkenRates } from './counts/gamma-poisson.ts';
export {
  type KolmogorovTest,
  kolmogorovCritical,
  kolmogorovCumulative,
  kolmogorovTest,
  twoSampleKolmogorov,
} from './counts/kolmogorov.ts';
export { overdispersedRate } from './counts/overdispersed-rate.ts';
export { type Pieces, piecewiseRates, type RatePiece } from './counts/piecewise-rates.ts';
export {
  type ArrivalBlock,
  poissonArrivalsTest,
  roundingUnit,
  unrounded,
} from './counts/poisson-arrivals.ts';
export { poissonRate, type RateRatio, rateRatio } from './counts/poisson-rate.ts';
export { enoughGood, type Starts, startsForGood } from './counts/starts-for-good.ts';
export {
  type LaplaceTrend,
  laplaceTrend,
  laplaceTrendToLastEvent,
  type PowerLaw,
  powerLaw,
} from './counts/trend-tests.ts';
export type { CensoredSample } from './durations/censored-sample.ts';
export {
  DURATION_FAMILIES,
  type DurationFamily,
  type DurationLaw,
  lawOf,
  meanOfLaw,
  quantileOfLaw,
} from './durations/families.ts';
export {
  type DurationFit,
  exponentialMean,
  FEWEST_FITTED,
  type FittedDurations,
  fitDurations,
  fitFamily,
} from './durations/fit-durations.ts';
export { type ExplainedVariance, explainedVariance } from './explained-variance.ts';
export { type FeasibilitySettings, type FeasibilityState, FeasibilityTest } from './feasibility.ts';
export { fixedSizeReplications } from './fixed-size.ts';
export {
  type CurveFamily,
  type FamilyBand,
  type GlobalEnvelope,
  globalEnvelope,
  ranksFromNearerEnd,
} from './global-envelope.ts';
export {
  type Estimate,
  estimateOver,
  FEWEST_REPLICATIONS,
  type Interval,
  type Never,
  type Prediction,
  type Refused,
} from './interval.ts';
export {
  type Elimination,
  type KimNelsonChoice,
  type KimNelsonSettings,
  kimNelson,
  type ObserveMeasure,
} from './kim-nelson.ts';
export { meanInterval, replicationsForHalfWidth, replicationsForRelativeError } from './mean-interval.ts';
export { mser, type WarmUp } from './mser.ts';
export { oneSidedConfidence, type ShareConfidence, shareConfidence } from './one-sided.ts';
export { type QuantileRanks, quantileRanks, sampleSizeForBound } from './order-statistics.ts';
export { pooledQuantile, pooledQuantileInterval } from './pooled-quantile.ts';
export { type Precision, sequentialPrecision } from './precision.ts';
export { onePeriodInterval } from './prediction.ts';
export { fewestForPrediction, predictionRank } from './prediction-rank.ts';
export { clopperPearsonInterval, wilsonInterval } from './proportion.ts';
export { type QuantileType, quantile } from './quantile.ts';
export { ratioInterval } from './ratio-interval.ts';
export { rinottConstant, rinottReplications } from './rinott.ts';
export { RunningMeans } from './running-means.ts';
export { RunningRatios } from './running-ratios.ts';
export { skewedConfidence } from './skewed-mean.ts';
export { normalDeviationInterval, pooledDeviationInterval } from './standard-deviation-interval.ts';
export {
  correlation,
  type Moments,
  mean,
  moments,
  standardDeviation,
  standardError,
  variance,
} from './summary.ts';
export { type TheoryCheck, type TheoryVerdict, theoryVerdict } from './theory-check.ts';
