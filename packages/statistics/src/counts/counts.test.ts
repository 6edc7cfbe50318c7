import { describe, expect, it } from 'vitest';
import { COAL_DISASTERS } from '../test-data/coal-disasters.ts';
import { chiSquareFit } from './chi-square-fit.ts';
import {
  dispersionTest,
  fitNegativeBinomial,
  negativeBinomialShapeByMoments,
  poissonLogLikelihood,
} from './dispersion.ts';
import { poissonRate, rateRatio } from './poisson-rate.ts';
import { enoughGood, startsForGood } from './starts-for-good.ts';
import { laplaceTrend, laplaceTrendToLastEvent, powerLaw } from './trend-tests.ts';

/** As many of each count as a table says. */
function repeated(table: readonly number[]): number[] {
  return table.flatMap((times, count) => Array.from({ length: times }, () => count));
}

function close(found: number, expected: number, relative = 1e-6): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(relative);
}

/** Mites on leaves. Source: C. I. Bliss and R. A. Fisher, Biometrics 9 (1953), 176–200 (data from memory). */
const MITES = repeated([70, 38, 17, 10, 9, 3, 2, 1]);
/** Deaths by the kick of a horse. Source: L. von Bortkiewicz, Das Gesetz der kleinen Zahlen (1898) (data from memory). */
const HORSE_KICKS = repeated([109, 65, 22, 3, 1]);

describe('poissonRate and rateRatio', () => {
  it('give the exact intervals of 17 requests in 30 days, and of none', () => {
    // Source: F. Garwood 1936; R, poisson.test.
    const some = poissonRate(17, 30, 0.95);
    close(some.low, 0.3301042157);
    close(some.high, 0.9072882272);
    const none = poissonRate(0, 30, 0.95);
    expect(none.low).toBe(0);
    close(none.high * 30, 3.688879454);
  });

  it('compare 17 requests in 30 days with 30 in 30', () => {
    const { ratio, pValue } = rateRatio({ count: 17, exposure: 30 }, { count: 30, exposure: 30 }, 0.95);
    close(pValue, 0.07894069368);
    close(ratio.low, 0.2931830487);
    close(ratio.high, 1.06101492);
  });

  it('refuse what is no count', () => {
    expect(() => poissonRate(-1, 30, 0.95)).toThrow(RangeError);
    expect(() => poissonRate(1.5, 30, 0.95)).toThrow(RangeError);
    expect(() => poissonRate(1, 0, 0.95)).toThrow(RangeError);
    expect(() => rateRatio({ count: 0, exposure: 1 }, { count: 0, exposure: 1 }, 0.95)).toThrow(RangeError);
  });
});

describe('dispersionTest and fitNegativeBinomial', () => {
  it('find that mites crowd on leaves', () => {
    const found = dispersionTest(MITES);
    close(found.mean, 1.146666667);
    close(found.variance, 2.273646532);
    close(found.index, 1.982831278);
    close(found.chiSquare, 295.4418605);
    close(found.pValue, 1.020566419e-11, 1e-5);
    const fit = fitNegativeBinomial(MITES);
    close(fit.shape, 1.024592387, 1e-5);
    close(fit.logLikelihood, -222.4371536);
    close(negativeBinomialShapeByMoments(MITES), 1.166697369);
    close(poissonLogLikelihood(MITES), -242.8099408);
  });

  it('find nothing beyond chance in the kicks of horses', () => {
    const found = dispersionTest(HORSE_KICKS);
    close(found.mean, 0.61);
    close(found.variance, 0.6109547739);
    close(found.chiSquare, 199.3114754);
    close(found.pValue, 0.4804495315);
  });

  it('take counts that vary less than chance as Poisson', () => {
    expect(fitNegativeBinomial([5, 5, 5, 5, 6]).shape).toBe(Number.POSITIVE_INFINITY);
    expect(negativeBinomialShapeByMoments([5, 5, 5, 5, 6])).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('chiSquareFit', () => {
  it('says that dice were not true, and that a fitted chance explains them', () => {
    // Source: K. Pearson 1900, the dice of W. F. R. Weldon (data from memory).
    const throws = 26_306;
    const seen = [185, 1149, 3265, 5475, 6114, 5194, 3067, 1331, 403, 105, 14 + 4 + 0];
    const expected = (p: number): number[] => {
      const mass = (k: number): number => {
        let value = throws * (1 - p) ** 12;
        for (let i = 1; i <= k; i++) value *= (((12 - i + 1) / i) * p) / (1 - p);
        return value;
      };
      const all = Array.from({ length: 13 }, (_, k) => mass(k));
      return [...all.slice(0, 10), all.slice(10).reduce((sum, value) => sum + value, 0)];
    };
    const honest = chiSquareFit(seen, expected(1 / 3), 0);
    expect(honest.degreesOfFreedom).toBe(10);
    close(honest.chiSquare, 35.49429859);
    close(honest.pValue, 0.0001027877989, 1e-5);
    const fitted = chiSquareFit(seen, expected(0.3376986239), 1);
    close(fitted.chiSquare, 8.179830626);
    close(fitted.pValue, 0.5161302778);
  });
});

describe('The tests for a trend', () => {
  /** Hours between failures of the air conditioning of plane 7909. Source: F. Proschan, Technometrics 5 (1963), 375–383 (data from memory). */
  const INTERVALS = [
    90, 10, 60, 186, 61, 49, 14, 24, 56, 20, 79, 84, 44, 59, 29, 118, 25, 156, 310, 76, 26, 44, 23, 62, 130,
    208, 70, 101, 208,
  ];
  let clock = 0;
  const failures = INTERVALS.map((interval) => (clock += interval));

  it('see no trend in the failures of a plane', () => {
    expect(clock).toBe(2422);
    const { score, pValue } = laplaceTrendToLastEvent(failures);
    close(score, -1.480403862);
    close(pValue, 0.1387654999);
    const power = powerLaw(failures);
    close(power.chiSquare, 64.39231104);
    close(power.exponent, 0.9007286594);
    close(power.rate, 0.02595227071);
    expect(power.hasTrend).toBe(false);
  });

  it('see coal mines become safer', () => {
    const { score } = laplaceTrend(
      COAL_DISASTERS.map((date) => date - 1851),
      112,
    );
    expect(COAL_DISASTERS).toHaveLength(191);
    close(score, -7.678156631);
  });
});

describe('startsForGood', () => {
  it('starts 14 pieces for ten good ones of a share of 85 %', () => {
    const { expected, fewest } = startsForGood(10, 0.85, 0.95);
    close(expected, 11.76470588);
    expect(fewest).toBe(14);
    close(enoughGood(12, 10, 0.85), 0.7358180862);
  });
});
