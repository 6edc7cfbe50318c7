/** What a fit leaves in doubt, of which a range from PERT has the same standard deviation. */
interface FitUncertainty {
  /** Standard deviation of the logarithm of measured over estimated print hours. */
  readonly spread: number;
  readonly builds: number;
  /** Builds less fitted factors. */
  readonly degreesOfFreedom: number;
}

/** With fewer, Student's t has no standard deviation. */
const FEWEST_DEGREES = 3;
/** Beyond this range on either side a fit is no knowledge. */
const WIDEST = 0.5;
/** Half the width of a symmetric PERT range over its standard deviation: mean square width / 7 (weight 4; from memory). */
const HALF_WIDTH = Math.sqrt(7);

/**
 * A line for `doubts`: how far print times may lie from a fit because it rests on few builds.
 *
 * The average variance of a fitted value is p s² / n, for n builds and p fitted factors, since the leverages add up to
 * p; s is estimated, so that Student's t stands for the normal, with a variance of df / (df − 2). Source: N. R. Draper
 * and H. Smith, Applied Regression Analysis (1998), chapter 8 (from memory).
 *
 * @param machines name of the machine group
 * @returns null where the builds say too little, or leave no doubt
 */
export function fitDoubt(machines: string, fit: FitUncertainty): string | null {
  const { spread, builds, degreesOfFreedom } = fit;
  if (degreesOfFreedom < FEWEST_DEGREES) return null;
  const fitted = builds - degreesOfFreedom;
  const deviation =
    spread * Math.sqrt(fitted / builds) * Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2));
  const half = HALF_WIDTH * deviation;
  if (half > WIDEST) return null;
  const percent = Math.ceil(100 * half - ROUNDING);
  return percent === 0 ? null : `print times of ${machines}: ${100 - percent} to ${100 + percent} %`;
}

const ROUNDING = 1e-6;
