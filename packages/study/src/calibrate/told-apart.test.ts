import type { BuildTimeModel } from '@buildweek/model';
import { fitBuildTime, type MeasuredBuild } from '@buildweek/timing';
import { describe, expect, it } from 'vitest';
import { notToldApart } from './told-apart.ts';

const FACTORS = [1.01, 0.99, 1.02, 0.98, 1, 1.01, 0.98, 1.02];

/** Builds whose volume and height follow from a number, with a little noise on hours that do as well. */
function builds(
  of: (index: number) => Pick<MeasuredBuild, 'volume' | 'height'>,
  hours: (build: Pick<MeasuredBuild, 'volume' | 'height'>) => number,
): MeasuredBuild[] {
  return FACTORS.map((factor, index) => ({ pieces: 1, ...of(index), printHours: factor * hours(of(index)) }));
}

const GENERAL: BuildTimeModel = {
  kind: 'volume and height',
  hoursPerBuild: 2,
  hoursPerCubicCentimetre: 0.05,
  hoursPerCentimetre: 0.5,
};

describe('notToldApart', () => {
  it('advises builds with much and little part in them where height and volume rose together', () => {
    const together = builds(
      (index) => ({ volume: 10_000 * (index + 1), height: 10 * (index + 1) }),
      ({ height }) => 2 + 0.1 * height,
    );
    expect(notToldApart(fitBuildTime(together, GENERAL))).toEqual([
      {
        parameters: ['hoursPerCubicCentimetre', 'hoursPerCentimetre'],
        text:
          'These builds do not tell time per cm3 of part and time per cm of height apart: a change of one looks like a ' +
          'change of the other; the ratio that the scenario has was kept, and all of it fitted with one factor. ' +
          'Measure a low build with much part in it and a high one with little.',
      },
    ]);
  });

  it('advises another height where all builds were as high', () => {
    const alike = builds(
      (index) => ({ volume: 20_000 * (index + 1), height: 50 }),
      ({ volume }) => 4 + volume / 20_000,
    );
    const [first, ...others] = notToldApart(fitBuildTime(alike, GENERAL));
    expect(others).toEqual([]);
    expect(first?.parameters).toEqual(['hoursPerBuild', 'hoursPerCentimetre']);
    expect(first?.text).toMatch(/Measure a very low build and a high one/);
  });

  it('says nothing where the builds tell everything apart', () => {
    const various = builds(
      (index) => ({
        volume: ([5, 90, 20, 70, 10, 150, 40, 8][index] as number) * 1000,
        height: 10 + 23 * ((index * 3) % 8),
      }),
      ({ volume, height }) => 2 + volume / 20_000 + height / 20,
    );
    expect(notToldApart(fitBuildTime(various, GENERAL))).toEqual([]);
  });
});
