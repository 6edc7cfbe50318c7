import { existsSync, readFileSync } from 'node:fs';
import { type PartAnswer, partAnswerSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const PATIENCE = 120_000;
const QUICK = ['--quantities', '1,20', '--plays', '20'];

let folder: Folder;

beforeAll(() => {
  folder = new Folder();
});

afterAll(() => {
  folder.remove();
});

describe('buildweek part', () => {
  it(
    'says on one screen which process to take for a mesh, for one piece and for many, and why',
    async () => {
      const { exitCode, stdout, stderr } = await buildweek(['part', 'scenarios/parts/bracket.stl', ...QUICK]);
      expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
      expect(stdout).toMatch(/^bracket, cleaned, in a lab of typical machines\n/);
      expect(stdout).toMatch(
        /For one piece: small extrusion \(MEX\), finished \d\.\d h after it is asked for/,
      );
      expect(stdout).toMatch(/For 20 pieces: /);
      expect(stdout).toMatch(/\n {2}compact powder \(PBF\) .* h \(/);
      expect(stdout).toContain('Minutes of people per piece');
      expect(stdout).toContain('Finished after, when asked for on Friday 15:00');
      expect(stdout).toContain('this is no safety assessment');
    },
    PATIENCE,
  );

  it(
    'answers for the routes of a scenario, writes the answer and the page, and the same again for the same seed',
    async () => {
      const json = folder.file('gear.json');
      const page = folder.file('gear.html');
      const lab = ['--in', 'scenarios/demo.yaml', ...QUICK];
      const { exitCode } = await buildweek([
        'part',
        'scenarios/parts/gear.3mf',
        ...lab,
        '--json',
        json,
        '--page',
        page,
      ]);
      expect(exitCode).toBe(0);
      const text = readFileSync(json, 'utf8');
      const answer: PartAnswer = partAnswerSchema.parse(JSON.parse(text));
      expect(answer.ways.map(({ route }) => route)).toEqual([
        'filament part',
        'heated part',
        'resin part',
        'powder part',
      ]);
      for (const { timelines } of answer.ways)
        expect(timelines.map(({ asked }) => asked)).toEqual(['Monday 09:00', 'Friday 15:00']);
      expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>/i);
      const again = await buildweek(['part', 'scenarios/parts/gear.3mf', ...lab, '--json', '-']);
      expect(again.stdout).toBe(text);
    },
    PATIENCE,
  );

  it(
    'takes a size and a volume, says what it estimated, and leaves out who cannot make it',
    async () => {
      const { exitCode, stdout } = await buildweek([
        'part',
        ...['--size', '320 x 40 x 30 mm', '--volume', '90 cm3'],
        ...QUICK,
      ]);
      expect(exitCode).toBe(0);
      expect(stdout).toContain('The surface was not given: taken as 472 cm2, that of the box around it.');
      expect(stdout).toMatch(
        /Cannot make it\n {2}- small extrusion: The part is too large for\s+"small extruder"/,
      );
    },
    PATIENCE,
  );

  it.each([
    ['nothing', [], /Which part\? Give an STL or 3MF file, or its size and volume/],
    ['a mesh and a size', ['a.stl', '--size', '1 x 1 x 1 mm'], /give the mesh alone/],
    [
      'sides that run together',
      ['--size', '60x40x30 mm', '--volume', '18 cm3'],
      /--size .*Write: --size "60 x 40 x 30 mm"/,
    ],
    [
      'a unit that is none',
      ['--size', '2 x 2 x 2 m', '--volume', '18 cm3'],
      /"m" is not a unit\. Write: --size "42 x 42 x 11 mm"/,
    ],
    ['a volume without a unit', ['--size', '60 x 40 x 30 mm', '--volume', '18'], /--volume "18": /],
    [
      'a volume that its box cannot hold',
      ['--size', '60 x 40 x 30 mm', '--volume', '90 cm3'],
      /more than a box/,
    ],
    ['no volume', ['--size', '60 x 40 x 30 mm', '--volume', '0 cm3'], /--volume "0 cm3": /],
    [
      'no pieces',
      ['--size', '9 x 9 x 9 mm', '--volume', '300 mm3', '--quantities', '0'],
      /whole numbers from 1/,
    ],
    ['a mesh that is not there', ['nowhere.stl'], /Cannot read the mesh nowhere\.stl: there is no such file/],
    ['a mesh that is none', ['README.md'], /neither STL nor 3MF|no mesh/],
    [
      'a part that no machine holds',
      ['--size', '900 x 900 x 900 mm', '--volume', '1000 cm3'],
      /No process of this lab can make the part/,
    ],
    ['a unit for a 3MF file', ['scenarios/parts/gear.3mf', '--unit', 'cm'], /says its unit itself/],
  ])('refuses %s, ends with 2 and writes nothing', async (_, asked, message) => {
    const json = folder.file('refused.json');
    const { exitCode, stdout, stderr } = await buildweek(['part', ...asked, '--json', json]);
    expect(stderr).toMatch(message);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(existsSync(json)).toBe(false);
  });
});

describe('buildweek typical-machines', () => {
  it('lists every class with what is low, typical and high, and where it is from', async () => {
    const { exitCode, stdout } = await buildweek(['typical-machines']);
    expect(exitCode).toBe(0);
    expect(stdout).toMatch(/compact PBF \(machines, PBF\)\n.*low +typical +high/);
    expect(stdout).toMatch(/cure unit \(stations\)/);
    expect(stdout).toContain('common practice');
  });

  it('gives one class as JSON, and says which there are for another name', async () => {
    const one = await buildweek(['typical-machines', 'Small MEX', '--json']);
    expect(JSON.parse(one.stdout)).toMatchObject([{ name: 'small MEX', process: 'MEX' }]);
    const other = await buildweek(['typical-machines', 'tiny MEX']);
    expect(other).toMatchObject({ exitCode: 2, stdout: '' });
    expect(other.stderr).toContain('There is no class "tiny MEX". There are: "small MEX"');
  });
});
