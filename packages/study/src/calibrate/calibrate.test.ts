import type { BuildTimeModel, Lab, PartShape, ShapedBuilds } from '@buildweek/model';
import { BuildTimer } from '@buildweek/timing';
import { describe, expect, it } from 'vitest';
import { build, lab, machine, part } from '../fixture/lab.ts';
import type { BuildRow } from './build-row.ts';
import { type Calibration, calibrate } from './calibrate.ts';

function block(width: number, depth: number, height: number, more: Partial<PartShape> = {}): PartShape {
  return {
    width,
    depth,
    height,
    volume: width * depth * height,
    surface: 2 * (width * depth + width * height + depth * height),
    footprint: width * depth,
    overhangArea: 0,
    supportedVolume: 0,
    supportContactArea: 0,
    layerAreas: [],
    ...more,
  };
}

/** The fin is so thin that it is solid; the hood stands on supports; none is whole layers of 0.2 mm high. */
const SHAPES: Readonly<Record<string, PartShape>> = {
  fin: block(1, 40, 30.1),
  cube: block(30, 30, 30.3),
  hood: block(60, 50, 12.5, { volume: 15_000, supportedVolume: 9000 }),
  mast: block(8, 8, 90.7),
};

const EXTRUSION: BuildTimeModel = {
  kind: 'extrusion',
  layer: 0.2,
  rate: 8,
  secondsPerLayer: 4,
  wallThickness: 1.2,
  skinThickness: 0.8,
  infillShare: 0.2,
  supportShare: 0.2,
};
const PLATFORM: ShapedBuilds['space'] = {
  kind: 'platform',
  width: 200,
  depth: 200,
  height: 200,
  margin: 0,
  spacing: 2,
};
const POWDER_BED: ShapedBuilds['space'] = {
  ...PLATFORM,
  kind: 'powder bed',
  packingDensity: 0.1,
  boxShare: 0.6,
};

function labWith(time: BuildTimeModel, space = PLATFORM): Lab {
  const shaped: ShapedBuilds = {
    space,
    time,
    timeFactor: { kind: 'lognormal', logMean: -0.005, logStandardDeviation: 0.1 },
    coolDownHoursPerMillimetre: 0,
    powder: null,
  };
  return lab({
    machines: [machine('printers', { process: 'MEX', shaped }), machine('others')],
    parts: [
      ...Object.entries(SHAPES).map(([name, shape]) =>
        part(name, [build('build', 'printers')], { print: { kind: 'shape', shape } }),
      ),
      part('lid', [build('build', 'others')]),
    ],
  });
}

/** What was in each build: pieces of fin, cube, hood and mast. */
const CONTENTS = [
  [4, 1, 0, 0],
  [0, 3, 1, 0],
  [0, 0, 4, 2],
  [9, 0, 0, 6],
  [0, 6, 2, 1],
  [2, 0, 1, 1],
  [0, 2, 0, 12],
] as const;

/** Rows of builds that took what the timer says, times a factor. */
function rowsOf(
  time: BuildTimeModel,
  heights: readonly number[],
  factors: readonly number[] = [],
): BuildRow[] {
  const timer = new BuildTimer(time, Object.values(SHAPES));
  let line = 1;
  return CONTENTS.flatMap((counts, index) => {
    const hours = timer.printHours(Int32Array.from(counts), heights[index] ?? 0) * (factors[index] ?? 1);
    return Object.keys(SHAPES).flatMap((name, shape) =>
      counts[shape] === 0
        ? []
        : [
            {
              line: ++line,
              build: `b${index}`,
              part: name,
              pieces: `${counts[shape]}`,
              hours: hours.toFixed(9),
            },
          ],
    );
  });
}

const HIGHEST = CONTENTS.map((counts) =>
  Math.max(...Object.values(SHAPES).map(({ height }, shape) => ((counts[shape] ?? 0) > 0 ? height : 0))),
);

function calibration(rows: readonly BuildRow[], of: Lab): Calibration {
  const outcome = calibrate(rows, of, 'printers');
  if (outcome.kind !== 'calibration') throw new Error(JSON.stringify(outcome));
  return outcome.calibration;
}

describe('calibrate', () => {
  it('finds the model again that mixed builds were timed with, thin, supported and of any height', () => {
    const truth = { ...EXTRUSION, rate: 5, secondsPerLayer: 9 } as const;
    const { parameters, builds, lines, spread, errors, warnings } = calibration(
      rowsOf(truth, HIGHEST),
      labWith(EXTRUSION),
    );
    expect(parameters.map(({ name, value, now }) => [name, value, now])).toEqual([
      ['rate', expect.closeTo(5, 6), 8],
      ['secondsPerLayer', expect.closeTo(9, 6), 4],
    ]);
    for (const one of builds) expect(one.estimatedHours).toBeCloseTo(one.measuredHours, 7);
    expect(builds.map(({ height }) => height)).toEqual(HIGHEST);
    expect(lines).toEqual(['lays down: 5 mm3 per s', 'time per layer: 9 s', 'print time spread: none']);
    expect(spread.now).toBeCloseTo(Math.sqrt(Math.expm1(0.01)), 12);
    expect(errors.largest).toBeLessThan(1e-6);
    expect(warnings).toEqual([]);
  });

  it('estimates as the timer does with the fitted and with the present model', () => {
    const factors = [1.05, 0.95, 1.02, 0.97, 1.01, 1.08, 0.94];
    const { parameters, builds } = calibration(rowsOf(EXTRUSION, HIGHEST, factors), labWith(EXTRUSION));
    const fitted = {
      ...EXTRUSION,
      ...Object.fromEntries(parameters.map(({ name, value }) => [name, value])),
    };
    const hours = (model: BuildTimeModel, index: number): number =>
      new BuildTimer(model, Object.values(SHAPES)).printHours(
        Int32Array.from(CONTENTS[index] ?? []),
        HIGHEST[index] ?? 0,
      );
    builds.forEach(({ estimatedHours, estimatedHoursNow }, index) => {
      expect(estimatedHours).toBeCloseTo(hours(fitted as BuildTimeModel, index), 9);
      expect(estimatedHoursNow).toBeCloseTo(hours(EXTRUSION, index), 9);
    });
  });

  it('takes the height of a powder cake from the packer, and warns of builds that do not go in', () => {
    const powder: BuildTimeModel = {
      kind: 'powder bed',
      layer: 0.1,
      secondsPerLayer: 30,
      scanRate: 500,
      bedding: 8,
    };
    const of = labWith(powder, { ...POWDER_BED, width: 60, depth: 60, height: 95 });
    const { builds, warnings } = calibration(rowsOf(powder, HIGHEST), of);
    // 4 fins and a cube: boxes with their spacing of 2 mm, at 60 % of 60 x 60 mm; volumes, at 10 %.
    const byBoxes = (4 * 3 * 42 * 32.1 + 32 * 32 * 32.3) / (0.6 * 3600);
    const byVolume = (4 * 40 * 30.1 + 900 * 30.3) / (0.1 * 3600);
    expect(builds[0]?.height).toBeCloseTo(Math.max(byBoxes, byVolume), 9);
    expect(builds.filter(({ fits }) => !fits).map(({ name }) => name)).toContain('b4');
    expect(warnings[0]).toMatch(/^Builds .*b4.* would not fit "printers" by the reckoning of this program\./);
  });

  it('words a fit by volume and height in one line, without what is zero', () => {
    const time: BuildTimeModel = {
      kind: 'volume and height',
      hoursPerBuild: 0,
      hoursPerCubicCentimetre: 0.05,
      hoursPerCentimetre: 0.4,
    };
    const { lines } = calibration(rowsOf(time, HIGHEST), labWith(time));
    expect(lines).toEqual(['print time: 0.05 h per cm3 plus 0.4 h per cm', 'print time spread: none']);
  });

  it('warns of a build that took far longer than it is estimated, with its line', () => {
    const rows = rowsOf(EXTRUSION, HIGHEST, [1, 1, 1, 1, 1, 4, 1]);
    const { warnings } = calibration(rows, labWith(EXTRUSION));
    const line = rows.find((row) => row.build === 'b5')?.line;
    expect(warnings).toContainEqual(expect.stringMatching(new RegExp(`^Build b5 \\(line ${line}\\) took `)));
  });

  it('says what the builds would put below zero, and leaves it out of the lines', () => {
    const time: BuildTimeModel = {
      kind: 'volume and height',
      hoursPerBuild: 0,
      hoursPerCubicCentimetre: 0.05,
      hoursPerCentimetre: 0.4,
    };
    // The more there is in them, the sooner they are done.
    const truth = { ...time, hoursPerCubicCentimetre: 0, hoursPerCentimetre: 1 } as const;
    const volumes = Object.values(SHAPES).map(({ volume }) => volume);
    const quick = CONTENTS.map((counts) =>
      volumes.reduce((factor, volume, shape) => factor - (counts[shape] ?? 0) * (volume / 400_000), 1),
    );
    const { warnings, lines, parameters } = calibration(rowsOf(truth, HIGHEST, quick), labWith(time));
    expect(parameters.find(({ name }) => name === 'hoursPerCubicCentimetre')).toMatchObject({
      value: 0,
      origin: 'zero',
      standardError: null,
    });
    expect(warnings).toContain('The builds would put the time per cm3 of part below zero: it is taken as 0.');
    expect(lines[0]).toMatch(/^print time: [^/]*h per cm$/);
    expect(lines[0]).not.toContain('cm3');
  });

  it('claims to explain nothing where all builds took the same time', () => {
    const rows = rowsOf(EXTRUSION, HIGHEST).map((row) => ({ ...row, hours: '5' }));
    const { explained, verdict, spread } = calibration(rows, labWith(EXTRUSION));
    expect(explained).toBeNull();
    expect(verdict[1]).toBe('All builds took the same time, so that there is nothing to explain.');
    expect(spread.value).toBeGreaterThan(0.1);
  });

  it('warns of a value outside of what is usual', () => {
    const rows = rowsOf({ ...EXTRUSION, rate: 60 } as BuildTimeModel, HIGHEST);
    const { warnings } = calibration(rows, labWith(EXTRUSION));
    expect(warnings).toContain(
      'The rate of laying down, 60 mm3 per s, is outside of what is usual, 3 to 25 mm3 per s.',
    );
  });

  it('fits one factor to three builds of three parameters, and says so', () => {
    const time: BuildTimeModel = {
      kind: 'volume and height',
      hoursPerBuild: 1,
      hoursPerCubicCentimetre: 0.05,
      hoursPerCentimetre: 0.4,
    };
    const rows = rowsOf(time, HIGHEST).filter((row) => ['b0', 'b1', 'b2'].includes(row.build));
    const { notToldApart, verdict } = calibration(rows, labWith({ ...time, hoursPerBuild: 2 }));
    expect(notToldApart).toHaveLength(1);
    expect(notToldApart[0]?.parameters).toEqual([
      'hoursPerBuild',
      'hoursPerCubicCentimetre',
      'hoursPerCentimetre',
    ]);
    expect(notToldApart[0]?.text).toMatch(
      /^3 builds are too few to tell time per build, time per cm3 of part and time per cm of height apart;/,
    );
    expect(verdict.join(' ')).toContain('From so few builds the spread is hardly known');
  });

  it('knows parts by their names in any case, and refuses what was not built on these machines', () => {
    const rows = rowsOf(EXTRUSION, HIGHEST);
    const shouted = rows.map((row) => ({ ...row, part: row.part.toUpperCase() }));
    expect(calibration(shouted, labWith(EXTRUSION)).builds).toHaveLength(CONTENTS.length);
    const [first, ...others] = rows as [BuildRow, ...BuildRow[]];
    const outcome = calibrate([{ ...first, part: 'lid' }, ...others], labWith(EXTRUSION), 'printers');
    expect(outcome).toMatchObject({
      kind: 'mistakes',
      mistakes: [{ line: first.line, column: 'part', message: '"lid" is built on "others".' }],
    });
  });

  it('refuses machines that are not there, or whose parts have no shapes', () => {
    const rows = rowsOf(EXTRUSION, HIGHEST);
    expect(calibrate(rows, labWith(EXTRUSION), 'printer')).toEqual({
      kind: 'refused',
      reason: expect.stringMatching(/has no machines "printer"\. There are: "printers"\.$/),
    });
    expect(calibrate(rows, labWith(EXTRUSION), 'others')).toMatchObject({ kind: 'refused' });
  });
});
