import { describe, expect, it } from 'vitest';
import { fitDoubt } from './fit-doubt.ts';

describe('the doubt that a fit leaves', () => {
  it('is the range whose PERT has the standard deviation of a fitted value', () => {
    // By hand: 0.05 × √(2 / 16) × √(14 / 12) = 0.019094; × √7 = 0.05052, rounded up to whole percent.
    expect(fitDoubt('powder', { spread: 0.05, builds: 16, degreesOfFreedom: 14 })).toBe(
      'print times of powder: 94 to 106 %',
    );
  });

  it('becomes smaller with more builds', () => {
    expect(fitDoubt('powder', { spread: 0.05, builds: 400, degreesOfFreedom: 398 })).toBe(
      'print times of powder: 99 to 101 %',
    );
  });

  it('is not said where builds are too few, lie too far apart, or agree exactly', () => {
    expect(fitDoubt('powder', { spread: 0.05, builds: 4, degreesOfFreedom: 2 })).toBeNull();
    expect(fitDoubt('powder', { spread: 0.6, builds: 6, degreesOfFreedom: 4 })).toBeNull();
    expect(fitDoubt('powder', { spread: 0, builds: 16, degreesOfFreedom: 14 })).toBeNull();
  });
});
