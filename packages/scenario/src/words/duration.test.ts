import { gammaFunction, inverseNormal } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { basedDuration, gap, plainDuration } from './duration.ts';
import { WordingError } from './wording-error.ts';

const distributionOf = (text: string) => plainDuration(text).distribution;

describe('a duration', () => {
  it('is constant when it is one number with a unit', () => {
    expect(distributionOf('20 min')).toEqual({ kind: 'constant', value: 20 / 60 });
    expect(distributionOf('3.5 h')).toEqual({ kind: 'constant', value: 3.5 });
    expect(distributionOf('90 s')).toEqual({ kind: 'constant', value: 90 / 3600 });
    expect(distributionOf('2 weeks')).toEqual({ kind: 'constant', value: 336 });
    expect(distributionOf('1 h 30 min')).toEqual({ kind: 'constant', value: 1.5 });
    expect(distributionOf('1 day 2 h 6 min')).toEqual({ kind: 'constant', value: 26.1 });
  });

  it('"10 to 45, usually 20 min" is PERT with these as minimum, maximum and mode', () => {
    const pert = { kind: 'pert', low: 10 / 60, mode: 20 / 60, high: 45 / 60 };
    expect(distributionOf('10 to 45, usually 20 min')).toEqual(pert);
    expect(distributionOf('10 to 45 min, usually 20')).toEqual(pert);
    expect(distributionOf('10 min to 45 min usually 20 min')).toEqual(pert);
    expect(distributionOf('30 min to 2 h, usually 1')).toEqual({ kind: 'pert', low: 0.5, mode: 1, high: 2 });
  });

  it('takes one unit at the end for all numbers before it', () => {
    expect(distributionOf('uniform 10 to 40 min')).toEqual({ kind: 'uniform', low: 10 / 60, high: 40 / 60 });
    expect(distributionOf('measured [6, 12, 30] min')).toEqual({ kind: 'measured', values: [0.1, 0.2, 0.5] });
    expect(distributionOf('measured 6, 12, 30 min')).toEqual({ kind: 'measured', values: [0.1, 0.2, 0.5] });
    expect(distributionOf('measured 1 h, 30 min')).toEqual({ kind: 'measured', values: [1, 0.5] });
  });

  it('reads every distribution of the model by its name', () => {
    expect(distributionOf('triangular 1 to 4 h, usually 2')).toEqual({
      kind: 'triangular',
      low: 1,
      mode: 2,
      high: 4,
    });
    expect(distributionOf('normal mean 2 h, deviation 30 min')).toEqual({
      kind: 'normal',
      mean: 2,
      standardDeviation: 0.5,
    });
    expect(distributionOf('exponential mean 2 h')).toEqual({ kind: 'exponential', mean: 2 });
    expect(distributionOf('erlang 4, mean 2 h')).toEqual({ kind: 'gamma', shape: 4, scale: 0.5 });
    expect(distributionOf('gamma shape 2, mean 3 h')).toEqual({ kind: 'gamma', shape: 2, scale: 1.5 });
    expect(distributionOf('gamma shape 2, scale 3 h')).toEqual({ kind: 'gamma', shape: 2, scale: 3 });
    expect(distributionOf('gamma mean 3 h, variation 0.5')).toEqual({ kind: 'gamma', shape: 4, scale: 0.75 });
    expect(distributionOf('weibull shape 2, scale 3 h')).toEqual({ kind: 'weibull', shape: 2, scale: 3 });
    expect(distributionOf('weibull shape 2, mean 3 h')).toEqual({
      kind: 'weibull',
      shape: 2,
      scale: 3 / gammaFunction(1.5),
    });
    expect(distributionOf('hyperexponential 10 % mean 5.5 h, 90 % mean 30 min')).toEqual({
      kind: 'hyperexponential',
      branches: [
        { probability: 0.1, mean: 5.5 },
        { probability: 0.9, mean: 0.5 },
      ],
    });
  });

  it('reads a lognormal by mean and variation, and by two percentiles', () => {
    // Mean 1.6 h, squared variation 0.5: sigma^2 = ln 1.5 = 0.4054651081, mu = 0.2672710752 (M/G/1 case of
    // Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, section 5.1; closed form).
    const byMean = distributionOf(`lognormal mean 1.6 h, variation ${Math.SQRT1_2}`);
    if (byMean.kind !== 'lognormal') throw new Error('not lognormal');
    expect(byMean.logStandardDeviation ** 2).toBeCloseTo(0.4054651081, 9);
    expect(byMean.logMean).toBeCloseTo(0.2672710752, 9);
    const byShares = distributionOf('lognormal 50 % 2 h, 95 % 6 h');
    if (byShares.kind !== 'lognormal') throw new Error('not lognormal');
    expect(Math.exp(byShares.logMean)).toBeCloseTo(2, 12);
    expect(Math.exp(byShares.logMean + inverseNormal(0.95) * byShares.logStandardDeviation)).toBeCloseTo(
      6,
      9,
    );
  });

  it('typically takes the usual value, or else the mean', () => {
    const typical = (text: string): number => plainDuration(text).typicalHours;
    expect(typical('1 to 9 h, usually 2')).toBe(2);
    expect(typical('triangular 1 to 9 h, usually 3')).toBe(3);
    expect(typical('4 h')).toBe(4);
    expect(typical('uniform 1 to 3 h')).toBe(2);
    expect(typical('lognormal mean 3 h, variation 0.7')).toBeCloseTo(3, 12);
    expect(typical('weibull shape 1.5, mean 7 h')).toBeCloseTo(7, 12);
    expect(typical('gamma shape 3, scale 2 h')).toBe(6);
    expect(typical('hyperexponential 50 % mean 1 h, 50 % mean 3 h')).toBe(2);
    expect(typical('measured 1, 2, 6 h')).toBe(3);
    expect(typical('normal mean 2 h, deviation 1 h')).toBe(2);
    expect(typical('exponential mean 5 h')).toBe(5);
  });

  it('says what it counts for, before or behind the comma', () => {
    const wording = basedDuration(['job', 'part', 'build']);
    const expected = { kind: 'pert', low: 10 / 60, mode: 20 / 60, high: 45 / 60 };
    for (const text of ['10 to 45 min per job, usually 20', '10 to 45 min, usually 20 per job']) {
      expect(wording(text)).toMatchObject({ basis: 'job', duration: { distribution: expected } });
    }
    expect(wording('5 min').basis).toBeNull();
  });

  it.each([
    ['20', '"20" has no unit.', '20 min'],
    ['10 to 45, usually 20', '"10 to 45, usually 20" has no unit.', '10 to 45, usually 20 min'],
    ['1,5 h', '"1,5" has a comma inside a number.', '1.5 h'],
    ['10 to 45 min', 'Two numbers leave open what is usual.', '10 to 45 min, usually 28'],
    [
      '45 to 10 min, usually 20',
      'The low end (45) is above the high end (10 min).',
      '10 min to 45, usually 20',
    ],
    [
      '10 to 45 min, usually 50',
      'The usual value (50) lies outside 10 to 45 min.',
      '10 to 45 min, usually 45 min',
    ],
    ['-5 min', 'It cannot be negative.', '10 to 45 min, usually 20'],
    ['.s', '"." is not understood here.', '10 to 45 min, usually 20'],
    ['1 to . h', '"." is not a number.', '10 to 45 min, usually 20'],
    ['20 mm', '"mm" measures a length, and a time is needed here.', '20 min'],
    ['20 %', '"%" measures a share, and a time is needed here.', '20 min'],
    ['20 mins', '"mins" is not a unit.', '20 min'],
    ['2 hours long', '"long" is not understood here.', '10 to 45 min, usually 20'],
    ['2 Hours', '"Hours" is not a unit.', '2 hours'],
    ['20 m', '"m" is not a unit.', '20 min'],
    ['unform 1 to 2 h', '"unform" is not understood here.', 'uniform 1 to 2 h'],
    ['lognormal mean 3 h', '"variation" is missing at the end.', 'lognormal mean 3 h, variation 0.7'],
    ['exponential 3 h', '"mean" is missing before "3".', 'exponential mean 2 h'],
    ['exponential mean 0 h', 'The mean has to be above zero.', 'exponential mean 2 h'],
    [
      'erlang 2.5, mean 3 h',
      'An Erlang distribution has a whole number of phases, not 2.5.',
      'erlang 3, mean 2 h',
    ],
    [
      'hyperexponential 10 % mean 5 h, 80 % mean 1 h',
      'The shares add up to 90 %, not to 100 %.',
      'hyperexponential 10 % mean 5.5 h, 90 % mean 30 min',
    ],
    [
      'lognormal 95 % 2 h, 50 % 6 h',
      'The two shares have to rise and to lie between 0 and 100 %.',
      'lognormal mean 3 h, variation 0.7',
    ],
    ['', 'Nothing is said here.', '10 to 45 min, usually 20'],
    ['20 min per job', '"per job" has no meaning here: the key says what it counts for.', '20 min'],
  ])('refuses "%s" and says what to write', (text, message, write) => {
    const error = refusal(plainDuration, text);
    expect(error.message).toBe(message);
    expect(error.write).toBe(write);
  });

  it('proposes what it may count for, and keeps it in what is to be written', () => {
    const wording = basedDuration(['job', 'part']);
    expect(refusal(wording, '5 min per piece').write).toBe('5 min per part');
    expect(refusal(basedDuration(['job', 'build']), '5 min per biuld').write).toBe('5 min per build');
    expect(refusal(wording, '5 to 9 min per part, usually 20').write).toBe(
      '5 to 9 min per part, usually 9 min',
    );
    expect(refusal(wording, '5 per part').write).toBe('5 min per part');
  });

  it('between arrivals has to be above zero', () => {
    expect(gap('2 h').typicalHours).toBe(2);
    expect(refusal(gap, '0 h').write).toBe('2 h');
  });

  it('comes out the same in any unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (minutes) => {
        const { typicalHours } = plainDuration(`${minutes} min`);
        expect(plainDuration(`${minutes * 60} s`).typicalHours).toBeCloseTo(typicalHours, 9);
        const split = `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
        expect(plainDuration(split).typicalHours).toBeCloseTo(typicalHours, 9);
      }),
    );
  });

  it('orders minimum, usual value and maximum for any three numbers that rise', () => {
    const three = fc.tuple(fc.nat(500), fc.nat(500), fc.nat(500));
    fc.assert(
      fc.property(three, fc.constantFrom('s', 'min', 'h', 'days'), (numbers, unit) => {
        const [low = 0, usual = 0, high = 0] = [...numbers].sort((a, b) => a - b);
        const { distribution, typicalHours } = plainDuration(`${low} to ${high} ${unit}, usually ${usual}`);
        if (distribution.kind === 'constant') expect(low).toBe(high);
        else if (distribution.kind === 'pert') {
          expect(distribution.low).toBeLessThanOrEqual(typicalHours);
          expect(typicalHours).toBeLessThanOrEqual(distribution.high);
        } else throw new Error(distribution.kind);
      }),
    );
  });

  it('never ends in anything but a duration or a wording error, whatever is written', () => {
    const word = fc.constantFrom(
      'uniform',
      'mean',
      'per',
      'part',
      'to',
      'usually',
      'min',
      'h',
      '%',
      ',',
      '[',
      ']',
      '-',
      '1,5',
      '3',
      '0.5',
      'gamma',
      'shape',
      'x',
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(word, { maxLength: 9 }).map((words) => words.join(' ')),
    );
    fc.assert(
      fc.property(text, (written) => {
        try {
          expect(basedDuration(['job', 'part'])(written).duration.typicalHours).toBeGreaterThanOrEqual(0);
        } catch (error) {
          expect(error).toBeInstanceOf(WordingError);
          expect((error as WordingError).write).not.toBe('');
        }
      }),
      { numRuns: 2000 },
    );
  });
});
