import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { layerFreePrintTime, printTime } from './print-time.ts';

describe('a print time', () => {
  const none = { distribution: { kind: 'constant', value: 0 }, typicalHours: 0 };
  const hours = (value: number) => ({ distribution: { kind: 'constant', value }, typicalHours: value });

  it('is per build, per part, or both', () => {
    expect(printTime('3 h per build')).toEqual({ kind: 'typed', perBuild: hours(3), perPart: none });
    expect(printTime('30 min per part')).toEqual({ kind: 'typed', perBuild: none, perPart: hours(0.5) });
    expect(printTime('6 min per part plus 2 h per build')).toEqual({
      kind: 'typed',
      perBuild: hours(2),
      perPart: hours(0.1),
    });
    expect(printTime('1 to 3 h per build, usually 2').perBuild.distribution).toEqual({
      kind: 'pert',
      low: 1,
      mode: 2,
      high: 3,
    });
  });

  it.each([
    ['3 h', '"3 h" does not say whether it is for a whole build or for each part.', '3 h per build'],
    [
      '3 h per build plus 1 h per build',
      'A time per build is there twice.',
      '2 h per build plus 5 min per part',
    ],
    ['3 h per job', 'A time "per job" is not possible here.', '3 h per build'],
  ])('refuses "%s"', (text, message, write) => {
    expect(refusal(printTime, text)).toMatchObject({ message, write });
  });
});

describe('a print time by volume and height', () => {
  it('is per build, per cm3 of parts and per cm of height', () => {
    expect(layerFreePrintTime('1 h per build plus 0.03 h per cm3 plus 0.7 h per cm')).toEqual({
      hoursPerBuild: 1,
      hoursPerCubicCentimetre: 0.03,
      hoursPerCentimetre: 0.7,
    });
    expect(layerFreePrintTime('30 min per cm of height')).toEqual({
      hoursPerBuild: 0,
      hoursPerCubicCentimetre: 0,
      hoursPerCentimetre: 0.5,
    });
  });

  it.each([
    ['1 h', '"1 h" does not say for what.'],
    ['1 h per cm plus 2 h per cm', 'A time per cm is there twice.'],
    [
      '1 to 3 h per build, usually 2',
      'These are one time each; how far prints are from it is the spread of the print time.',
    ],
    ['0 h per build', 'A print takes some time.'],
  ])('is refused: %s', (text, message) => {
    expect(refusal(layerFreePrintTime, text).message).toBe(message);
  });
});
