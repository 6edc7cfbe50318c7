import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { areaText, density, measure, rate, volumeText } from './measure.ts';

describe('a measure', () => {
  const length = measure('length', '3 mm', { orZero: true });
  const area = measure('area', '60 cm2');
  const volume = measure('volume', '5200 mm3');

  it('is in mm, mm2 or mm3, whatever the unit it is written in', () => {
    expect(length('3 mm')).toBe(3);
    expect(length('1.5 cm')).toBe(15);
    expect(area('60 cm2')).toBe(6000);
    expect(volume('5.2 cm3')).toBeCloseTo(5200, 9);
    expect(volume('4 litres')).toBe(4e6);
  });

  it('may be zero only where that has a meaning', () => {
    expect(length('0 mm')).toBe(0);
    expect(refusal(volume, '0 mm3').message).toBe('It cannot be zero.');
    expect(refusal(length, '-3 mm').message).toBe('It cannot be negative.');
  });

  it.each([
    ['5200', '"5200" has no unit.', '5200 mm3'],
    ['5,2 cm3', '"5,2" has a comma inside a number.', '5.2 cm3'],
    ['5200 mm2', '"mm2" measures an area, and a volume is needed here.', '5200 mm3'],
    ['5200 mm³', '"mm³" is not a unit.', '5200 mm3'],
    ['5.2 ml', '"ml" is not a unit.', '5.2 cm3'],
    ['5200 mm3 or so', '"or so" is not understood here.', '5200 mm3'],
  ])('is refused with what to write: %s', (text, message, write) => {
    expect(refusal(volume, text)).toMatchObject({ message, write });
  });
});

describe('a rate', () => {
  const deposit = rate('volume', '8 mm3 per s');

  it('counts in a second', () => {
    expect(deposit('8 mm3 per s')).toBe(8);
    expect(deposit('36 cm3 per h')).toBeCloseTo(10, 12);
    expect(rate('area', '800 mm2 per s')('6 cm2 per min')).toBeCloseTo(10, 12);
  });

  it.each([
    ['8 mm3', '"8 mm3" does not say in which time.', '8 mm3 per s'],
    ['8 mm3 per day', '"per day" is not possible here.', '8 mm3 per s'],
    ['0 mm3 per s', 'At this rate nothing would ever be finished.', '8 mm3 per s'],
    ['8 per s', '"8 per s" has no unit.', '8 mm3 per s'],
  ])('is refused with what to write: %s', (text, message, write) => {
    expect(refusal(deposit, text)).toMatchObject({ message, write });
  });
});

describe('a density', () => {
  it('is in g per cm3', () => {
    expect(density('0.45 g per cm3')).toBe(0.45);
    expect(refusal(density, '0.45').write).toBe('0.45 g per cm3');
    expect(refusal(density, '0.45 g per mm3').write).toBe('0.45 g per cm3');
    expect(refusal(density, '0 g per cm3').message).toBe('It cannot be zero.');
  });
});

describe('what a measure is called', () => {
  it('takes the unit that gives a short number', () => {
    expect([volumeText(800), volumeText(5200), volumeText(1_234_567)]).toEqual([
      '800 mm3',
      '5.2 cm3',
      '1235 cm3',
    ]);
    expect([areaText(80), areaText(12_345)]).toEqual(['80 mm2', '123.5 cm2']);
  });
});
