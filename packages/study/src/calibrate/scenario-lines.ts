import type { BuildTimeModel } from '@buildweek/model';
import type { BuildTimeFit } from '@buildweek/timing';
import { parameterWords } from './parameter-words.ts';
import { withDigits, writtenNumber } from './written-number.ts';

/** A scenario takes no larger spread. */
const LARGEST_SPREAD = 1;
/** A smaller one is none. */
const SMALLEST_SPREAD = 0.0005;

/**
 * What a fit is in the words of a scenario: lines that stand under the machines. What the builds say nothing of is
 * left out, so that the scenario keeps it.
 */
export function scenarioLines(fit: BuildTimeFit): string[] {
  return [...modelLines(fit), spreadLine(variationOf(fit.spread))];
}

/**
 * Coefficient of variation of a lognormal factor.
 * Source: A. M. Law, Simulation Modeling and Analysis, section 6.2.2 (from memory).
 * @param logStandardDeviation standard deviation of its logarithm
 */
export function variationOf(logStandardDeviation: number): number {
  return Math.sqrt(Math.expm1(logStandardDeviation ** 2));
}

function modelLines(fit: BuildTimeFit): string[] {
  const text = (name: string): string => {
    const parameter = fit.parameters.find((one) => one.name === name);
    return parameter === undefined ? '0' : writtenNumber(parameter.value, parameter.standardError);
  };
  if (fit.model.kind === 'volume and height') return [`print time: ${printTimeOf(text)}`];
  return fit.parameters
    .filter(({ origin }) => origin !== 'start value')
    .map(({ name }) => lineOf(name, `${text(name)} ${parameterWords(name).unit}`, fit.model));
}

/** The time of a bottom layer is what it takes more than any other, in the model and in these words. */
function lineOf(name: string, amount: string, model: BuildTimeModel): string {
  switch (name) {
    case 'rate':
      return `lays down: ${amount}`;
    case 'scanRate':
      return `scans: ${amount}`;
    case 'secondsPerBottomLayer':
      return `bottom layers: ${model.kind === 'mask' ? model.bottomLayers : 0} at ${amount} more each`;
    default:
      return `time per layer: ${amount}`;
  }
}

function printTimeOf(text: (name: string) => string): string {
  const terms = [
    ['hoursPerBuild', 'build'],
    ['hoursPerCubicCentimetre', 'cm3'],
    ['hoursPerCentimetre', 'cm'],
  ] as const;
  return terms
    .map(([name, per]) => [text(name), per] as const)
    .filter(([amount]) => amount !== '0')
    .map(([amount, per]) => `${amount} h per ${per}`)
    .join(' plus ');
}

function spreadLine(variation: number): string {
  if (variation < SMALLEST_SPREAD) return 'print time spread: none';
  return `print time spread: ${withDigits(100 * Math.min(LARGEST_SPREAD, variation), 2)} %`;
}
