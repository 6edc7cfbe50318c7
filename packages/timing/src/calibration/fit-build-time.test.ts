import type { BuildTimeModel } from '@buildweek/model';
import { inverseNormal, studentQuantile } from '@buildweek/numbers';
import { describe, expect, it } from 'vitest';
import { BuildTimer } from '../build-timer.ts';
import { block } from '../test-data/blocks.ts';
import { draws, wholeNumber } from '../test-data/draws.ts';
import { fitBuildTime } from './fit-build-time.ts';
import type { MeasuredBuild } from './measured-build.ts';

const extrusion: BuildTimeModel = {
  kind: 'extrusion',
  layer: 0.2,
  rate: 8,
  secondsPerLayer: 4,
  wallThickness: 1.2,
  skinThickness: 0.8,
  infillShare: 0.2,
  supportShare: 0.2,
};
const mask: BuildTimeModel = {
  kind: 'mask',
  layer: 0.05,
  secondsPerLayer: 8,
  bottomLayers: 5,
  secondsPerBottomLayer: 40,
};
const laser: BuildTimeModel = { kind: 'laser vat', layer: 0.1, secondsPerLayer: 25, scanRate: 300 };
const powder: BuildTimeModel = {
  kind: 'powder bed',
  layer: 0.1,
  secondsPerLayer: 30,
  scanRate: 500,
  bedding: 8,
};
const general: BuildTimeModel = {
  kind: 'volume and height',
  hoursPerBuild: 2,
  hoursPerCubicCentimetre: 0.03,
  hoursPerCentimetre: 0.7,
};

/** Builds of blocks as the timer says they print, times a factor for each. */
function buildsOf(model: BuildTimeModel, count: number, seed: string, spread = 0): MeasuredBuild[] {
  const draw = draws(seed);
  return Array.from({ length: count }, () => {
    const pieces = wholeNumber(draw, 1, 12);
    // Heights on whole layers, so that the layers of the sum are the sum of the layers.
    const height = wholeNumber(draw, 20, 400) / 5;
    const solid = block(wholeNumber(draw, 10, 60), wholeNumber(draw, 10, 60), height);
    const shape = { ...solid, volume: solid.volume * (0.3 + 0.7 * draw()) };
    const hours = new BuildTimer(model, [shape]).printHours(Int32Array.of(pieces), height);
    const factor = Math.exp(spread * inverseNormal(draw()) - spread ** 2 / 2);
    return {
      pieces,
      volume: pieces * shape.volume,
      surface: pieces * shape.surface,
      footprint: pieces * shape.footprint,
      height,
      printHours: hours * factor,
    };
  });
}

const heights = (...values: number[]) =>
  values.map((height, index) => ({
    pieces: 1,
    volume: 5000 + 900 * index,
    height,
    printHours: 1 + 0.02 * index,
  }));

describe('fitBuildTime', () => {
  it.each([
    [extrusion, { ...extrusion, rate: 5, secondsPerLayer: 9 }],
    [mask, { ...mask, secondsPerLayer: 12, secondsPerBottomLayer: 30 }],
    [laser, { ...laser, scanRate: 100, secondsPerLayer: 40 }],
    [powder, { ...powder, scanRate: 900, secondsPerLayer: 20 }],
    [general, { ...general, hoursPerBuild: 0.5, hoursPerCubicCentimetre: 0.1, hoursPerCentimetre: 0.2 }],
  ] as const)('finds the parameters of %o again from builds that it timed', (truth, start) => {
    const fit = fitBuildTime(buildsOf(truth, 12, truth.kind), start);
    for (const { name, value, origin } of fit.parameters) {
      expect(value / (truth as unknown as Record<string, number>)[name]).toBeCloseTo(1, 6);
      expect(origin).toBe('fitted');
    }
    expect(fit.model).toEqual({
      ...truth,
      ...Object.fromEntries(fit.parameters.map(({ name, value }) => [name, value])),
    });
    expect(fit.explained).toBeCloseTo(1, 9);
    expect(fit.spread).toBeLessThan(1e-6);
    expect(fit.notToldApart).toEqual([]);
  });

  it('covers the true parameters and the true spread as often as it says', () => {
    const runs = 400;
    const spread = 0.15;
    let rate = 0;
    let perLayer = 0;
    let width = 0;
    for (let run = 0; run < runs; run++) {
      const fit = fitBuildTime(buildsOf(extrusion, 15, `coverage ${run}`, spread), extrusion);
      const t = studentQuantile(0.975, fit.degreesOfFreedom);
      const covers = (index: number, truth: number): boolean =>
        Math.abs(fit.parameters[index].value - truth) <=
        t * (fit.parameters[index].standardError ?? Number.NaN);
      if (covers(0, 8)) rate++;
      if (covers(1, 4)) perLayer++;
      if (fit.spreadLow <= spread && spread <= fit.spreadHigh) width++;
    }
    // 3.3 standard deviations of a binomial share; a few runs join the two parameters, which costs nothing here.
    const within = (share: number): number => 3.3 * Math.sqrt((share * (1 - share)) / runs);
    expect(Math.abs(rate / runs - 0.95)).toBeLessThan(within(0.95));
    expect(Math.abs(perLayer / runs - 0.95)).toBeLessThan(within(0.95));
    expect(Math.abs(width / runs - 0.9)).toBeLessThan(within(0.9));
  });

  it('gives the spread as a lognormal factor of mean 1', () => {
    const fit = fitBuildTime(buildsOf(powder, 200, 'one factor', 0.2), powder);
    expect(fit.spread).toBeGreaterThan(0.17);
    expect(fit.spread).toBeLessThan(0.23);
    expect(fit.factor).toEqual({
      kind: 'lognormal',
      logMean: -(fit.spread ** 2) / 2,
      logStandardDeviation: fit.spread,
    });
    expect(fit.ratios).toHaveLength(200);
    expect(fit.medianError).toBeGreaterThan(0.1);
    expect(fit.medianError).toBeLessThan(fit.largestError);
  });

  it('has a constant factor when every build is met exactly', () => {
    const builds = heights(20, 40, 60).map((build) => ({ ...build, printHours: build.height / 10 }));
    expect(fitBuildTime(builds, { ...mask, bottomLayers: 0 }).factor).toEqual({ kind: 'constant', value: 1 });
  });

  it('keeps the ratio of parameters that builds of one height cannot tell apart, and names them', () => {
    const fit = fitBuildTime(heights(30, 30, 30, 30), mask);
    expect(fit.notToldApart).toEqual([['secondsPerLayer', 'secondsPerBottomLayer']]);
    const [perLayer, further] = fit.parameters;
    expect(perLayer.origin).toBe('in ratio');
    expect(perLayer.value / further.value).toBeCloseTo(8 / 40, 12);
    // The mean of 1, 1.02, 1.04 and 1.06 h for 600 layers of 8 s and 5 x 40 s.
    expect(perLayer.value).toBeCloseTo((8 * 1.03 * 3600) / 5000, 9);
    expect(fit.explained).toBeCloseTo(0, 9);
  });

  it('joins only the pair that cannot be told apart and leaves the third parameter free', () => {
    // Volume and height rise together.
    const builds = [30, 60, 90, 50, 80, 20].map((height, index) => ({
      pieces: 1,
      volume: 1000 * height,
      height,
      printHours: (5 + 0.1 * height) * [1.01, 0.99, 1, 1.02, 0.98, 1][index],
    }));
    const fit = fitBuildTime(builds, general);
    expect(fit.notToldApart).toEqual([['hoursPerCubicCentimetre', 'hoursPerCentimetre']]);
    expect(fit.parameters.map(({ origin }) => origin)).toEqual(['fitted', 'in ratio', 'in ratio']);
    expect(fit.parameters[0].value).toBeCloseTo(5, 0);
  });

  it('fits one factor for all when there are no more builds than parameters', () => {
    const builds = buildsOf(general, 3, 'three').map((build) => ({
      ...build,
      printHours: 1.5 * build.printHours,
    }));
    const fit = fitBuildTime(builds, general);
    expect(fit.parameters.map(({ value }) => value)).toEqual([
      expect.closeTo(3, 9),
      expect.closeTo(0.045, 9),
      expect.closeTo(1.05, 9),
    ]);
    expect(fit.degreesOfFreedom).toBe(2);
    expect(fit.notToldApart).toHaveLength(3);
  });

  it('leaves at its start value what no build has anything of', () => {
    const fit = fitBuildTime(heights(20, 40, 60, 70), { ...mask, bottomLayers: 0 });
    expect(fit.parameters[1]).toEqual({
      name: 'secondsPerBottomLayer',
      value: 40,
      start: 40,
      origin: 'start value',
      standardError: null,
      isUsual: true,
    });
    const three = fitBuildTime(heights(20, 40, 60), { ...general, hoursPerBuild: 0 });
    expect(three.parameters[0]).toMatchObject({ value: 0, origin: 'start value' });
  });

  it('never lets a time fall below zero, nor a rate become endless', () => {
    // Longer for less volume, and in proportion to the layers.
    const odd = [20, 30, 40, 50, 60, 70].map((height) => ({
      pieces: 1,
      volume: 1_000_000 / height,
      height,
      printHours: height / 10,
    }));
    const fit = fitBuildTime(odd, general);
    expect(fit.parameters.map(({ value, origin }) => [value, origin])).toEqual([
      [0, 'zero'],
      [0, 'zero'],
      [expect.closeTo(1, 9), 'fitted'],
    ]);
    const scan = fitBuildTime(odd, laser).parameters[1];
    expect(scan.value).toBeGreaterThan(0);
    expect(Number.isFinite(scan.value)).toBe(true);
    expect(scan.origin).toBe('in ratio');
  });

  it('says when a parameter is outside of its usual range', () => {
    const builds = buildsOf({ ...extrusion, rate: 60 }, 10, 'fast');
    const [rate, perLayer] = fitBuildTime(builds, extrusion).parameters;
    expect([rate.isUsual, perLayer.isUsual]).toEqual([false, true]);
  });

  it('takes the weighed volume and the sum of heights where a lab has them', () => {
    const builds: MeasuredBuild[] = [1, 2, 3, 4, 5].map((count) => ({
      pieces: count,
      volume: 90_000,
      height: 40,
      heights: 10 * count * count,
      deposited: 8000 * count,
      printHours: (1000 * count + 50 * count * count * 4) / 3600,
    }));
    const [rate, perLayer] = fitBuildTime(builds, { ...extrusion, rate: 5, secondsPerLayer: 2 }).parameters;
    expect(rate.value).toBeCloseTo(8, 6);
    expect(perLayer.value).toBeCloseTo(4, 6);
  });

  it('refuses a fit on two builds', () => {
    expect(() => fitBuildTime(heights(20, 30), mask)).toThrow(
      new RangeError(
        'Print times are fitted to at least 3 measured builds, not 2: with fewer nobody can say how far the ' +
          'estimates are off. Measure more builds, or keep the typical values.',
      ),
    );
  });

  it.each([
    [{ pieces: 0 }, 'The number of pieces of measured build 2 must be above 0, not 0.'],
    [{ volume: -1 }, 'The volume of measured build 2 must be above 0, not -1.'],
    [{ height: Number.NaN }, 'The height of measured build 2 must be above 0, not NaN.'],
    [{ printHours: 0 }, 'The print time of measured build 2 must be above 0, not 0.'],
    [{ supportedVolume: -5 }, 'The supported volume of measured build 2 must be 0 or more, not -5.'],
    [{ deposited: 0 }, 'The deposited volume of measured build 2 must be above 0, not 0.'],
    [{ heights: 0 }, 'The sum of heights of measured build 2 must be above 0, not 0.'],
    [{ surface: 0 }, 'The surface of measured build 2 must be above 0, not 0.'],
    [{ footprint: 0 }, 'The footprint of measured build 2 must be above 0, not 0.'],
  ])('refuses a build with %o', (wrong, message) => {
    const builds = heights(20, 30, 40).map((build, index) => (index === 1 ? { ...build, ...wrong } : build));
    expect(() => fitBuildTime(builds, mask)).toThrow(new RangeError(message));
  });

  it('asks for what the deposited volume of a build follows from', () => {
    expect(() => fitBuildTime(heights(20, 30, 40), extrusion)).toThrow(
      new RangeError(
        'Measured build 1 needs its deposited volume, or the surface and the footprint of its parts.',
      ),
    );
  });

  it('refuses a start model that takes no time at all', () => {
    const nothing = { ...general, hoursPerBuild: 0, hoursPerCubicCentimetre: 0, hoursPerCentimetre: 0 };
    expect(() => fitBuildTime(heights(20, 30, 40), nothing)).toThrow(
      new RangeError('The start model gives no print time for one of the measured builds.'),
    );
  });
});
