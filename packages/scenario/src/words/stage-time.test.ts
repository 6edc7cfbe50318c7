import type { Distribution } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { type PartMeasure, stageTime, timeOfPart } from './stage-time.ts';
import { typicalHours } from './typical.ts';

const read = stageTime(['job', 'part', 'build']);
const SIZES: Readonly<Record<PartMeasure, number>> = { surface: 6000, 'support contact': 300, volume: 5000 };
const minutesOf = (text: string) => timeOfPart(read(text), (measure) => SIZES[measure]).typicalHours * 60;

describe('a time at a stage', () => {
  it('may count for a job, a part or a build, without a size', () => {
    expect(read('20 min per job')).toMatchObject({ basis: 'job', bySize: [] });
    expect(read('20 min')).toMatchObject({ basis: null, bySize: [] });
  });

  it('may grow with surface, support contact and volume of a part', () => {
    expect(minutesOf('0.2 min per cm2 of surface')).toBeCloseTo(12, 9);
    expect(minutesOf('0.002 min per mm2 of the surface')).toBeCloseTo(12, 9);
    expect(minutesOf('2 min per cm2 of support contact')).toBeCloseTo(6, 9);
    expect(minutesOf('1 min per cm3 of part')).toBeCloseTo(5, 9);
    expect(
      minutesOf('1 min per part plus 2 min per cm2 of support contact plus 0.1 min per cm3 of part'),
    ).toBeCloseTo(7.5, 9);
  });

  it('keeps its kind when one of the terms is a range', () => {
    const time = read('1 min per part plus 0.2 to 0.8 min per cm2 of support contact, usually 0.4');
    const minutes = (value: number) => expect.closeTo(value / 60, 12);
    expect(timeOfPart(time, (measure) => SIZES[measure])).toEqual({
      distribution: { kind: 'pert', low: minutes(1.6), mode: minutes(2.2), high: minutes(3.4) },
      typicalHours: minutes(2.2),
    });
    const measured = read('1 min per part plus measured [2, 4] min per cm2 of support contact');
    expect(timeOfPart(measured, (measure) => SIZES[measure]).distribution).toEqual({
      kind: 'measured',
      values: [minutes(7), minutes(13)],
    });
  });

  it.each([
    'uniform 1 to 3 min',
    'triangular 1 to 4 min, usually 2',
    'normal mean 20 min, deviation 5 min',
    'lognormal mean 3 h, variation 0.7',
    'exponential mean 2 h',
    'gamma shape 2, mean 3 h',
    'weibull shape 1.5, mean 20 h',
    'hyperexponential 10 % mean 5.5 h, 90 % mean 30 min',
    'measured 10, 12, 30 min',
  ])('is so many times as long for a part with so much surface: %s', (text) => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e6, noNaN: true }), (surface) => {
        const plain = read(text).duration;
        const grown = timeOfPart(read(`${text} per mm2 of surface`), () => surface);
        const mean = (distribution: Distribution): number => typicalHours(distribution);
        expect(grown.distribution.kind).toBe(plain.distribution.kind);
        expect(grown.typicalHours / (plain.typicalHours * surface)).toBeCloseTo(1, 9);
        expect(mean(grown.distribution) / (mean(plain.distribution) * surface)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('is nothing where there is nothing of what it grows with', () => {
    const time = read('lognormal mean 3 min, variation 0.7 per cm2 of support contact');
    expect(timeOfPart(time, () => 0)).toEqual({
      distribution: { kind: 'constant', value: 0 },
      typicalHours: 0,
    });
  });

  it.each([
    ['0.4 min per cm2', '"per cm2" does not say of what.', '0.4 min per cm2 of surface'],
    [
      '0.4 min per cm3 of surface',
      'A time "per cm3 of surface" is not possible here.',
      '0.4 min per cm3 of part',
    ],
    [
      '0.4 min per cm2 of suport contact',
      'A time "per cm2 of suport contact" is not possible here.',
      '0.4 min per cm2 of support contact',
    ],
    [
      '5 min per job plus 0.4 min per cm2 of surface',
      'A time by the size of the part is added to a time per part, and to no other.',
      '5 min per part plus 0.4 min per cm2 of surface',
    ],
    [
      '5 min plus 0.4 min per cm2 of surface',
      'A time by the size of the part is added to a time per part, and to no other.',
      '5 min per part plus 0.4 min per cm2 of surface',
    ],
  ])('is refused with what to write: %s', (text, message, write) => {
    expect(refusal(read, text)).toMatchObject({ message, write });
    expect(() => read(write)).not.toThrow();
  });

  it('is refused when the sum of its terms is no distribution that has a name', () => {
    expect(
      refusal(read, '1 to 3 min per part, usually 2 plus 0.2 to 0.8 min per cm2 of surface, usually 0.4')
        .message,
    ).toBe('Only one of the times added may be a range; the others are one time each.');
    expect(refusal(read, '1 min per part plus exponential mean 2 min per cm2 of surface').message).toBe(
      'Times that are exponential cannot be added to others.',
    );
    expect(refusal(read, '1 min per cm2 of surface plus 2 min per mm2 of surface').message).toBe(
      'A time per mm2 of surface is there twice.',
    );
  });
});
