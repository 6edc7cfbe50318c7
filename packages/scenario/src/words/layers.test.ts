import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { bottomLayers, printTimeSpread, secondsPerLayer } from './layers.ts';

describe('the time of a layer', () => {
  it('is one time in seconds', () => {
    expect(secondsPerLayer('8 s')).toBeCloseTo(8, 12);
    expect(secondsPerLayer('1 min')).toBeCloseTo(60, 12);
    expect(refusal(secondsPerLayer, '4 to 20 s, usually 8').write).toBe('8 s');
    expect(refusal(secondsPerLayer, '8').write).toBe('8 s');
  });
});

describe('bottom layers', () => {
  it('take so long each, or so much more each than any other', () => {
    expect(bottomLayers('5 at 40 s each')).toMatchObject({ number: 5, isMore: false });
    expect(bottomLayers('5 at 40 s each').seconds).toBeCloseTo(40, 12);
    expect(bottomLayers('5 layers at 40 s')).toMatchObject({ number: 5, isMore: false });
    expect(bottomLayers('5 at 32 s more each')).toMatchObject({ number: 5, isMore: true });
    expect(bottomLayers('none')).toEqual({ number: 0, seconds: 0, isMore: true });
  });

  it.each([
    ['5', '"5" is not understood here.', '5 at 40 s each'],
    ['some at 40 s each', '"some" is not a whole number.', '5 at 40 s each'],
    ['5 at 40 each', '"40" has no unit.', '5 at 40 s each'],
  ])('are refused with what to write: %s', (text, message, write) => {
    expect(refusal(bottomLayers, text)).toMatchObject({ message, write });
  });
});

describe('the spread of print times', () => {
  it('is a lognormal factor with mean 1 and this coefficient of variation', () => {
    const spread = printTimeSpread('15 %');
    if (spread.kind !== 'lognormal') throw new Error('not lognormal');
    const variance = spread.logStandardDeviation ** 2;
    // Mean exp(m + s2 / 2) and squared coefficient of variation exp(s2) - 1 of a lognormal distribution:
    // Law, Simulation Modeling and Analysis, section 6.2.2 (from memory).
    expect(Math.exp(spread.logMean + variance / 2)).toBeCloseTo(1, 12);
    expect(Math.sqrt(Math.expm1(variance))).toBeCloseTo(0.15, 12);
  });

  it('may be none', () => {
    expect(printTimeSpread('none')).toEqual({ kind: 'constant', value: 1 });
    expect(printTimeSpread('0 %')).toEqual({ kind: 'constant', value: 1 });
    expect(refusal(printTimeSpread, '15').write).toBe('15 %');
    expect(refusal(printTimeSpread, '150 %').write).toBe('100 %');
  });
});
