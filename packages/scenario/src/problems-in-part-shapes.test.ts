import { describe, expect, it } from 'vitest';
import { edited } from './fixture/plain-lab.ts';
import { expectOneShapeProblem, type ShapeMistake } from './fixture/shape-mistake.ts';
import { editedShapes, problemsOfShaped, readShaped, SHAPED_LAB } from './fixture/shaped-lab.ts';

const MISTAKES: readonly ShapeMistake[] = [
  [
    '42 x 42 x 11 mm',
    '42 x 42 x 0 mm',
    '42 x',
    'A box whose height is zero holds nothing.',
    'for example: 42 x 42 x 11 mm',
  ],
  ['42 x 42 x 11 mm', '-42 x 42 x 11 mm', '-42', 'It cannot be negative.', '42 x 42 x 11 mm'],
  ['volume: 5200 mm3', 'volume: 0 mm3', '0 mm3', 'It cannot be zero.', 'for example: 5200 mm3'],
  [' volume: 5200 mm3,', '', 'ring', '"volume" is missing in "ring".', 'volume: 5200 mm3'],
  [
    'volume: 5200 mm3',
    'volume: 52 cm3',
    '52 cm3',
    'A volume of 52 cm3 is more than the box of 19.4 cm3 around the part.',
    'for example: 9.702 cm3',
  ],
  [
    'surface: 60 cm2',
    'surface: 60 mm2',
    '60 mm2',
    'A surface of 60 mm2 is less than that of a ball of 5.2 cm3.',
    'for example: 29.03 cm2',
  ],
  [
    'support contact: 120 mm2',
    'support contact: 120 cm2',
    '120 cm2',
    'A support contact of 120 cm2 is more than the surface of 60 cm2.',
    'for example: 3 cm2',
  ],
  [
    'supported volume: 800 mm3',
    'supported volume: 800 cm3',
    '800 cm3',
    'Supports have room in what the part leaves of its box, and that is 14.2 cm3.',
    'for example: 3.551 cm3',
  ],
  [
    'size: 60 x 40 x 30 mm',
    'supports: 800 mm3, size: 60 x 40 x 30 mm',
    'supports',
    '"supports" is not known in "brick".',
    'supported volume',
  ],
  [
    'volume: 50 cm3',
    'volume: 50 cm3, print: 3 h per build, fits: 4 per build',
    'print',
    '"print" and "fits" are typed, and "size" says it in another way: choose one.',
    'the part without "print" and "fits", or without "size"',
  ],
  [
    'mesh: parts/housing.3mf',
    'mesh: parts/housing.3mf, space: 10 % of a build',
    'space',
    '"space" is typed, and "mesh" says it in another way: choose one.',
    'the part without "space", or without "mesh"',
  ],
  [
    'mesh: parts/housing.3mf',
    'mesh: parts/housing.3mf, unit: mm',
    'unit',
    '"unit" has no meaning here: a 3MF file says its unit itself.',
    'the part without it',
  ],
  [
    'volume: 50 cm3',
    'volume: 50 cm3, orientation: best',
    'orientation',
    '"orientation" has no meaning here: there is no mesh.',
    'mesh: parts/bracket.stl',
  ],
  [
    'mesh: parts/housing.3mf',
    'mesh: parts/housing.3mf, volume: 5 cm3',
    'volume',
    '"volume" has no meaning here: the mesh says it.',
    'the mesh, or size and volume',
  ],
  [
    'mesh: parts/housing.3mf',
    'mesh: parts/house.3mf',
    'parts/house.3mf',
    'There is no file "parts/house.3mf" here.',
    'parts/bracket.stl',
  ],
  [
    '42 x 42 x 11 mm',
    '200 x 42 x 11 mm',
    '200 x 42',
    '"ring" is too large for "resin": 61 mm too wide for the 139 x 76 x 170 mm between its margins.',
    'a route with a build on filament, vat or paste',
  ],
  [
    '42 x 42 x 11 mm',
    '120 x 100 x 11 mm',
    '120 x 100',
    '"ring" is too large for "resin": 24 mm too deep for the 139 x 76 x 170 mm between its margins.',
    'size: 120 x 11 x 100 mm (laid on another side)',
  ],
  [
    '180 x 120 x 90 mm, volume: 95 cm3',
    '480 x 500 x 500 mm, volume: 9500 cm3',
    '480 x 500',
    '"duct" is too large for "vat": 30 mm too wide and 50 mm too deep and 100 mm too high for the 450 x 450 x 400 mm between its margins.',
    'platform: … of a larger machine, or a part in pieces',
  ],
  [
    'size: 60 x 40 x 30 mm, volume: 50 cm3',
    'size: 60 x 40 x 30 mm, volume: 50',
    '50',
    '"50" has no unit.',
    '50 mm3',
  ],
  [
    'size: 20 x 30 x 8 mm, volume: 1.6 cm3',
    'print: 3 h per build, fits: 100 per build',
    'print',
    'The higher a build on "powder", the longer it cools, and of "clip" no size is known.',
    'size: 40 x 30 x 20 mm, and volume: 6 cm3; or cool-down: 4 to 20 h, usually 10 under machines / powder',
  ],
  [
    'on: vat',
    'on: basket',
    'size',
    '"size" has no meaning here: the route "vat part" has no build.',
    'the part without it, or another route',
  ],
  ['pieces: 10 to 50', 'pieces: 0', '0', '0 is not a whole number from 1 up.', 'for example: 1 to 12'],
];

const AT_STAGES: readonly ShapeMistake[] = [
  [
    'mesh: parts/housing.3mf',
    'print: 3 h per build, fits: 2 per build',
    'housing',
    '"remove supports" takes its time by the support contact of a part, and of "housing" no size is known.',
    'mesh: parts/part.stl, or times: { remove supports: 5 min per part }',
  ],
  [
    'mesh: parts/housing.3mf',
    'size: 60 x 40 x 25 mm, volume: 18 cm3',
    'housing',
    '"housing" does not say its support contact, by which "remove supports" takes its time.',
    'support contact: 120 mm2',
  ],
  [
    'takes: 0.1 min per cm3 of part, for finish: only as printed',
    'takes: 0.1 min per cm3 of part, level: build',
    'build',
    '"wipe" takes whole builds, but does not come directly behind a build.',
    'level: job, or "level: build" at the stages before it',
  ],
  [
    '- build: { on: vat }',
    '- build: { on: vat }\n    - drain: { by: hand work, takes: 0.1 min per cm3 of part, level: build }',
    'takes',
    'Whole builds go through "drain", and no single part has a time there.',
    'takes: 30 min per build',
  ],
  [
    '- build: { on: vat }',
    '- build: { on: vat }\n    - drain: { by: hand work, takes: 5 min per build, for finish: smooth }',
    'for finish',
    'Whole builds go through "drain", with parts of every finish.',
    'the stage without it',
  ],
  [
    '{ on: vat }',
    '{ on: vat, for finish: smooth }',
    'for finish',
    'Parts are built whatever their finish.',
    'the build without it',
  ],
  [
    'for finish: [smooth] }',
    'for finish: [smooth] }\n    - inspect: { by: hand work, takes: 2 min, rejects: 4 % back to sand }',
    '4 % back',
    '"housing", finished "cleaned", leaves out "sand", where its replacements would start.',
    '4 % back to build',
  ],
  [
    'for finish: [smooth] }',
    'for finish: [smooth] }\n    - inspect: { by: hand work, takes: 2 min, at most: 2 h after sand }',
    '2 h after',
    '"housing", finished "cleaned", leaves out "sand", which the wait for "inspect" counts from.',
    '2 h',
  ],
  [
    'mesh: parts/housing.3mf',
    'mesh: parts/housing.3mf, times: { sand: 5 min per part }',
    'sand',
    '"housing" leaves out "sand": it is finished "cleaned".',
    'finish: smooth at the part, or its times without this one',
  ],
  [
    'holds: 4 litres',
    'holds: 10 cm3',
    'basket',
    '"ring" does not go into "basket": its box takes 19.4 cm3.',
    'holds: 20 cm3 under stations / basket',
  ],
];

describe('a mistake in the shape of a part is pointed at, with what to write instead:', () => {
  it.each([...MISTAKES, ...AT_STAGES])('%s -> %s', (...mistake) => expectOneShapeProblem(mistake));

  it('a volume that is hardly anything of its box, with a warning', () => {
    expect(problemsOfShaped(editedShapes('volume: 50 cm3', 'volume: 50 mm3'))).toEqual([
      expect.objectContaining({
        severity: 'warning',
        found: '50 mm3',
        message: 'Of its box of 72 cm3 the part takes only 50 mm3.',
      }),
    ]);
  });

  it('a mesh where nobody reads meshes', () => {
    const reading = readShaped(SHAPED_LAB, null);
    const problems = reading.kind === 'problems' ? reading.problems : [];
    expect(problems.map(({ found, message }) => [found, message])).toEqual([
      ['parts/bracket.stl', 'Meshes cannot be read here.'],
      ['parts/housing.3mf', 'Meshes cannot be read here.'],
    ]);
  });

  it('a part without a size at a station that is filled by volume', () => {
    const text = edited('holds: 2 builds', 'holds: 4 litres').replace(', empties carrier: yes', '');
    expect(problemsOfShaped(text).map(({ line, message }) => [line, message])).toEqual([
      [20, '"washer" is filled by volume, and of "ring" no size is known.'],
    ]);
  });
});
