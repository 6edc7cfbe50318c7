import { describe, expect, it } from 'vitest';
import { AskedSizeError, askedSize } from './asked-size.ts';

function mistake(typed: Parameters<typeof askedSize>[0]): AskedSizeError {
  try {
    askedSize(typed);
  } catch (error) {
    if (error instanceof AskedSizeError) return error;
  }
  throw new Error('Nothing was wrong.');
}

describe('A typed size', () => {
  it('is completed by estimates, and says which', () => {
    const { shape, notes } = askedSize({ size: '60 x 40 x 30 mm', volume: '18 cm3', surface: '95 cm2' });
    expect(shape).toMatchObject({
      kind: 'size',
      size: '60 x 40 x 30 mm',
      volume: '18000 mm3',
      surface: '9500 mm2',
    });
    expect(notes).toHaveLength(2);
    expect(notes[0]).toMatch(/^The volume below overhangs was not given: taken as .* cm3, as such boxes/);
  });

  it('that is all there needs no estimate', () => {
    const { notes } = askedSize({
      size: '60 x 40 x 30 mm',
      volume: '18 cm3',
      surface: '95 cm2',
      supportedVolume: '0 mm3',
      supportContact: '0 mm2',
    });
    expect(notes).toEqual([]);
  });

  it('says which measure is wrong, and what to write', () => {
    expect(mistake({ size: '60x40x30 mm', volume: '18 cm3' })).toMatchObject({
      what: 'size',
      write: '60 x 40 x 30 mm',
    });
    expect(mistake({ size: '60 x 40 x 30 mm', volume: '18' })).toMatchObject({ what: 'volume' });
    expect(mistake({ size: '60 x 40 x 30 mm', volume: '0 mm3' })).toMatchObject({ what: 'volume' });
    expect(mistake({ size: '60 x 40 x 30 mm', volume: '180 cm3' })).toMatchObject({
      what: 'volume',
      message: expect.stringMatching(/more than a box/),
      write: '36 cm3',
    });
    expect(mistake({ size: '60 x 40 x 30 mm', volume: '18 cm3', surface: '9 cm2' })).toMatchObject({
      what: 'surface',
      message: expect.stringMatching(/less than a sphere/),
      write: '108 cm2',
    });
  });

  it('is passed on as it was typed, so that a full box still holds its volume', () => {
    const { shape } = askedSize({ size: '31.344 x 25.4 x 25.4 mm', volume: '20221.8 mm3' });
    expect(shape).toMatchObject({ size: '31.344 x 25.4 x 25.4 mm', volume: '20221.8 mm3' });
  });
});
