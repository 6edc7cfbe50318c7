import { describe, expect, it } from 'vitest';
import { edited } from './fixture/plain-lab.ts';
import { expectOneShapeProblem, type ShapeMistake } from './fixture/shape-mistake.ts';
import { problemsOfShaped } from './fixture/shaped-lab.ts';

const MISTAKES: readonly ShapeMistake[] = [
  [
    '145 x 82 x 170 mm',
    '145x82x170 mm',
    '145x82x170',
    'The sides in "145x82x170 mm" run together.',
    '145 x 82 x 170 mm',
  ],
  [
    '145 x 82 x 170 mm',
    '145 x 82 x 170 mm, margin: 41 mm',
    '41 mm',
    'A margin of 41 mm on both sides leaves nothing of a platform of 145 x 82 x 170 mm.',
    'for example: 3 mm',
  ],
  [
    '145 x 82 x 170 mm',
    '145 x 82 x 170 mm, spacing: 90 mm',
    '90 mm',
    'A spacing of 90 mm is more than the platform of 145 x 82 x 170 mm has between its margins.',
    'for example: 2 mm',
  ],
  [
    '145 x 82 x 170 mm',
    '5 x 82 x 170 mm',
    '5 x 82',
    'A margin of 3 mm on both sides leaves nothing of a platform of 5 x 82 x 170 mm.',
    'for example: 250 x 250 x 250 mm',
  ],
  [
    'platform: 450 x 450 x 400 mm, ',
    '',
    'vat',
    '"platform" is missing in "vat".',
    'platform: 250 x 250 x 250 mm',
  ],
  ['    layer: 0.2 mm\n', '', 'filament', '"layer" is missing in "filament".', 'layer: 0.1 mm'],
  [
    '    time per layer: 3 s\n',
    '',
    'filament',
    '"time per layer" is missing in "filament".',
    'time per layer: 8 s',
  ],
  [
    '    lays down: 30 cm3 per h\n',
    '',
    'filament',
    '"lays down" is missing in "filament".',
    'lays down: 8 mm3 per s',
  ],
  [
    '    packing density: 10 %\n',
    '',
    'powder',
    '"packing density" is missing in "powder".',
    'packing density: 10 %',
  ],
  ['    scans: 250 mm2 per s\n', '', 'powder', '"scans" is missing in "powder".', 'scans: 800 mm2 per s'],
  [', virgin: 40 %', '', 'powder', '"virgin" is missing in "powder".', 'virgin: 40 %'],
  ['packing density: 10 %', 'packing density: 0 %', '0 %', 'It cannot be zero.', 'for example: 10 %'],
  ['layer: 0.2 mm', 'layer: 0 mm', '0 mm', 'It cannot be zero.', '0.1 mm'],
  [
    '4 at 30 s more each',
    '4 at 3 s each',
    '4 at 3 s',
    'Bottom layers of 3 s would take less than the 8 s of any other.',
    'for example: 4 at 40 s each',
  ],
  [
    'bottom layers: 4 at 30 s more each',
    'scans: 200 mm2 per s',
    'scans',
    '"scans" has no meaning here: VPP machines with a mask print in another way.',
    'the machine without it',
  ],
  [
    'jobs per build: 1',
    'packing density: 10 %',
    'packing density',
    '"packing density" has no meaning here: MEX machines print in another way.',
    'the machine without it',
  ],
  [
    'print time: 30 min per build',
    'layer: 0.1 mm, print time: 30 min per build',
    'layer',
    '"layer" has no meaning here: "print time" says how long a build prints.',
    'the machine without it',
  ],
  [
    ', print time: 30 min per build plus 0.05 h per cm3 plus 0.4 h per cm',
    '',
    'paste',
    '"process" is missing in "paste".',
    'process: MEX, or: print time: 1 h per build plus 0.03 h per cm3 plus 0.5 h per cm',
  ],
  [
    'print time: 30 min per build plus 0.05 h per cm3 plus 0.4 h per cm',
    'process: other',
    'other',
    'How such a machine prints is not known.',
    'print time: 1 h per build plus 0.03 h per cm3 plus 0.5 h per cm beside it',
  ],
  ['jobs per build: 1', 'jobs per build: 0', '0', '"0" is not a whole number from 1 up.', 'for example: 1'],
  ['holds: 4 litres', 'holds: 0 litres', '0 litres', 'It cannot be zero.', 'for example: 4 litres'],
];

describe('a mistake in the builds of a machine is pointed at, with what to write instead:', () => {
  it.each(MISTAKES)('%s -> %s', (...mistake) => expectOneShapeProblem(mistake));

  it('a cool-down by the height of builds whose height nobody knows', () => {
    const text = edited('small mask VPP', 'small mask VPP, cool-down: 2 h plus 0.06 h per mm');
    expect(problemsOfShaped(text)).toEqual([
      expect.objectContaining({
        severity: 'error',
        line: 9,
        message:
          'Nothing is known of the height of these builds: no part with a size or a mesh is built here.',
      }),
    ]);
  });
});
