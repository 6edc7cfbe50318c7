import type { BuildTimeModel, Distribution } from '@buildweek/model';
import { chiSquareQuantile } from '@buildweek/numbers';
import { BUILD_TIME_PARAMETERS } from '../build-time-parameters.ts';
import { checkBuildTimeModel } from '../check-build-time-model.ts';
import type { BuildTimeFit, FittedParameter } from './build-time-fit.ts';
import { fitInGroups, type Group, pairsOf, type StartColumn } from './grouped-fit.ts';
import { type Term, termsOf } from './linear-form.ts';
import { checkMeasuredBuild, type MeasuredBuild } from './measured-build.ts';
import type { NonnegativeFit } from './nonnegative-fit.ts';

/** With fewer builds nothing can be said about how far estimates are off. */
export const FEWEST_BUILDS = 3;

/** A spread below this is rounding. */
const EXACT = 1e-9;

/**
 * Fits the parameters of a build time model to builds that a lab has measured: least squares of the relative errors,
 * with no parameter below zero. Where the builds cannot tell two parameters apart, and do not contradict the ratio
 * that these have in the start model, the ratio is kept and one factor is fitted for both; with no more builds than
 * parameters there is one factor for all. What remains as spread is the uncertainty of a build.
 *
 * The error of a build is taken as a lognormal factor with mean 1, the same for small and for large builds.
 * @param builds at least three
 * @param start its kind is what is fitted; its settings are taken as given
 * @throws RangeError with fewer builds, or when a number of a build or of the model is not possible
 */
export function fitBuildTime(builds: readonly MeasuredBuild[], start: BuildTimeModel): BuildTimeFit {
  checkBuildTimeModel(start);
  if (builds.length < FEWEST_BUILDS) {
    throw new RangeError(
      `Print times are fitted to at least ${FEWEST_BUILDS} measured builds, not ${builds.length}: with fewer nobody ` +
        'can say how far the estimates are off. Measure more builds, or keep the typical values.',
    );
  }
  builds.forEach(checkMeasuredBuild);
  const terms = termsOf(start);
  const columns = terms.map((term): StartColumn => {
    const coefficient = term.coefficientOf(valueIn(start, term.parameter));
    const unit = coefficient > 0 ? coefficient : 1;
    return {
      values: builds.map((build, position) => unit * term.measure(build, position)),
      hasStart: coefficient > 0,
      isRate: term.isRate,
    };
  });
  const measured = builds.map((build) => build.printHours);
  const grouped = fitInGroups(columns, measured);
  if (grouped === null) {
    throw new RangeError('The start model gives no print time for one of the measured builds.');
  }
  const { groups, fit } = grouped;
  return describe(builds, start, terms, groups, fit);
}

function valueIn(model: BuildTimeModel, parameter: string): number {
  return (model as unknown as Record<string, number>)[parameter];
}

function describe(
  builds: readonly MeasuredBuild[],
  start: BuildTimeModel,
  terms: readonly Term[],
  groups: readonly Group[],
  fit: NonnegativeFit,
): BuildTimeFit {
  const parameters = terms.map((term, index) => describeParameter(start, term, index, groups, fit));
  const fittedValues = Object.fromEntries(parameters.map(({ name, value }) => [name, value]));
  const ratios = builds.map((build, index) => build.printHours / fit.fitted[index]);
  const errors = ratios.map((ratio) => Math.abs(1 / ratio - 1)).sort((first, second) => first - second);
  const { degreesOfFreedom } = fit;
  const spread = spreadOf(ratios, degreesOfFreedom);
  const bound = (p: number): number =>
    spread * Math.sqrt(degreesOfFreedom / chiSquareQuantile(p, degreesOfFreedom));
  return {
    model: { ...start, ...fittedValues } as BuildTimeModel,
    factor: factorOf(spread),
    builds: builds.length,
    degreesOfFreedom,
    spread,
    spreadLow: bound(0.95),
    spreadHigh: bound(0.05),
    parameters,
    notToldApart: groups.flatMap((group) =>
      pairsOf(group).map(
        ([first, second]) => [terms[group[first]].parameter, terms[group[second]].parameter] as const,
      ),
    ),
    explained: explainedOf(builds, fit.fitted),
    ratios,
    medianError: (errors[Math.floor((errors.length - 1) / 2)] + errors[Math.floor(errors.length / 2)]) / 2,
    largestError: errors[errors.length - 1],
  };
}

function describeParameter(
  model: BuildTimeModel,
  term: Term,
  index: number,
  groups: readonly Group[],
  fit: NonnegativeFit,
): FittedParameter {
  const name = term.parameter;
  const start = valueIn(model, name);
  const position = groups.findIndex((group) => group.includes(index));
  const isAlone = position >= 0 && groups[position].length === 1;
  const isFixed = position < 0 || (!isAlone && !(start > 0));
  const startCoefficient = term.coefficientOf(start);
  const coefficient = isFixed
    ? startCoefficient
    : fit.coefficients[position] * (startCoefficient > 0 ? startCoefficient : 1);
  const value = isFixed ? start : term.parameterOf(coefficient);
  const error = isFixed ? null : fit.errors[position];
  const usual = BUILD_TIME_PARAMETERS[model.kind].find((parameter) => parameter.name === name);
  return {
    name,
    value,
    start,
    origin: isFixed ? 'start value' : coefficient === 0 ? 'zero' : isAlone ? 'fitted' : 'in ratio',
    // To first order a rate has the relative error of the time that it stands for.
    standardError: error === null ? null : (value * error) / fit.coefficients[position],
    isUsual: usual !== undefined && value >= usual.low && value <= usual.high,
  };
}

function spreadOf(ratios: readonly number[], degreesOfFreedom: number): number {
  const logarithms = ratios.map((ratio) => Math.log(ratio));
  const middle = logarithms.reduce((sum, value) => sum + value, 0) / logarithms.length;
  return Math.sqrt(logarithms.reduce((sum, value) => sum + (value - middle) ** 2, 0) / degreesOfFreedom);
}

/** A lognormal factor with mean 1 has a logarithm with mean minus half of its variance. */
function factorOf(spread: number): Distribution {
  if (spread < EXACT) return { kind: 'constant', value: 1 };
  return { kind: 'lognormal', logMean: -(spread ** 2) / 2, logStandardDeviation: spread };
}

function explainedOf(builds: readonly MeasuredBuild[], fitted: readonly number[]): number | null {
  const middle = builds.reduce((sum, build) => sum + build.printHours, 0) / builds.length;
  const total = builds.reduce((sum, build) => sum + (build.printHours - middle) ** 2, 0);
  if (total === 0) return null;
  return 1 - builds.reduce((sum, build, index) => sum + (build.printHours - fitted[index]) ** 2, 0) / total;
}
