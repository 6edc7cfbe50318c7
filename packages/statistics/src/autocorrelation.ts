import { checkValues } from './checks.ts';
import { mean } from './summary.ts';

/**
 * The autocorrelation at a lag, both sums taken about the one overall mean.
 * Source: G. E. P. Box and G. M. Jenkins, Time Series Analysis, section 2.1 (from memory); it is the definition
 * of the NIST Statistical Reference Datasets.
 * @returns NaN for a series that does not vary
 * @throws RangeError unless the lag is a whole number from 0 to the length less 1
 */
export function autocorrelation(series: ArrayLike<number>, lag: number): number {
  checkValues(series, 2);
  if (!(Number.isInteger(lag) && lag >= 0 && lag < series.length)) {
    throw new RangeError(`The lag must be a whole number from 0 to ${series.length - 1}, not ${lag}`);
  }
  const centre = mean(series);
  let products = 0;
  let squares = 0;
  for (let index = 0; index < series.length; index++) {
    const deviation = (series[index] as number) - centre;
    squares += deviation * deviation;
    if (index >= lag) products += deviation * ((series[index - lag] as number) - centre);
  }
  return products / squares;
}

/**
 * Sum of squared successive differences over the sum of squared deviations: near 2 for independent values,
 * lower the more a value resembles the one before.
 * Source: J. von Neumann, "Distribution of the ratio of the mean square successive difference to the variance",
 * Annals of Mathematical Statistics 12 (1941), 367–395.
 * @returns NaN for a series that does not vary
 * @throws RangeError for fewer than two values, or one that is not finite
 */
export function vonNeumannRatio(series: ArrayLike<number>): number {
  checkValues(series, 2);
  const centre = mean(series);
  let differences = 0;
  let squares = 0;
  for (let index = 0; index < series.length; index++) {
    const value = series[index] as number;
    squares += (value - centre) ** 2;
    if (index > 0) differences += (value - (series[index - 1] as number)) ** 2;
  }
  return differences / squares;
}
