import { readFileSync } from 'node:fs';
import { shapeOfDimensions } from '@buildweek/timing';
import { describe, expect, it } from 'vitest';
import { TYPICAL_LAB } from './classes/typical-lab.ts';
import { readScenario } from './read-scenario.ts';
import type { ShapeReader } from './shape-reader.ts';
import { type AskedPart, readWaysOfMaking } from './ways-of-making.ts';

const refuseMeshes: ShapeReader = () => ({ kind: 'refused', message: 'No mesh is asked for.', write: '' });

const BRACKET: AskedPart = {
  finish: 'cleaned',
  shape: {
    kind: 'size',
    size: '60 x 40 x 30 mm',
    volume: '18 cm3',
    surface: '95 cm2',
    supportedVolume: '4 cm3',
    supportContact: '6 cm2',
  },
};

function waysOf(part: AskedPart, text = TYPICAL_LAB, shapes = refuseMeshes) {
  return readWaysOfMaking(text, 'lab.yaml', part, null, shapes);
}

function stagesOf(part: AskedPart, route: string): string[] {
  const way = waysOf(part).ways.find((candidate) => candidate.route === route);
  return way?.lab.parts[0]?.stages.map(({ name }) => name) ?? [];
}

describe('The ways of making a part', () => {
  it('are the routes of a lab, each with the part alone; the typical lab is a scenario without a fault', () => {
    expect(readScenario(TYPICAL_LAB, 'lab.yaml')).toMatchObject({ kind: 'scenario' });
    const { ways, impossible } = waysOf(BRACKET);
    expect(impossible).toEqual([]);
    expect(ways.map(({ route }) => route)).toEqual([
      'small extrusion',
      'heated extrusion',
      'small vat',
      'large vat',
      'compact powder',
      'large powder',
    ]);
    for (const { route, lab } of ways) {
      expect(lab.parts).toHaveLength(1);
      expect(lab.parts[0]).toMatchObject({
        name: route,
        route,
        print: { kind: 'shape', shape: { volume: 18_000 } },
      });
    }
  });

  it('need no price of the material where the lab speaks of money: the question is about time', () => {
    const demo = readFileSync(new URL('../../../scenarios/demo.yaml', import.meta.url), 'utf8');
    expect(demo).toMatch(/^money:/m);
    const { ways, impossible } = waysOf(BRACKET, demo);
    expect(impossible).toEqual([]);
    expect(ways).toHaveLength(4);
  });

  it('leave out what the finish does not ask for', () => {
    expect(stagesOf({ ...BRACKET, finish: 'as printed' }, 'small extrusion')).toEqual([
      'prepare file',
      'build',
      'inspect',
    ]);
    expect(stagesOf(BRACKET, 'small extrusion')).toContain('remove supports');
    expect(stagesOf(BRACKET, 'small extrusion')).not.toContain('sand');
    expect(stagesOf({ ...BRACKET, finish: 'smooth' }, 'compact powder')).toEqual([
      'build',
      'unpack',
      'remove powder',
      'blast',
      'sand',
      'inspect',
    ]);
  });

  it.each([
    ['smooth', true],
    ['only smooth', true],
    ['SMOOTH', true],
    ['cleaned', false],
    ['only cleaned', false],
    ['[cleaned, smooth]', false],
    ['[only as printed, smooth]', true],
  ])(
    'make a part smooth when a stage is for that and not for cleaned parts: for finish: %s',
    (finish, makes) => {
      const text = `
buildweek: 1
hours: { day: { mon-fri: 08:00-16:00 } }
people: { technicians: { hours: day, skills: [run machines, sand] } }
machines: { extruder: { class: small MEX } }
routes:
  printed: [build: { on: extruder }, sand: { by: sand, takes: 5 min per part, for finish: ${finish} }]
parts: { lever: { route: printed, size: 20 x 20 x 20 mm, volume: 5 cm3 } }
demand: { lever: { jobs: 1 per week } }
`;
      const { ways, impossible } = waysOf({ ...BRACKET, finish: 'smooth' }, text);
      expect(ways).toHaveLength(makes ? 1 : 0);
      expect(impossible).toEqual(
        makes ? [] : [{ route: 'printed', reason: 'No stage of the route makes a part smooth.' }],
      );
    },
  );

  it('say why a route cannot make it', () => {
    const beam: AskedPart = {
      ...BRACKET,
      shape: { ...BRACKET.shape, size: '340 x 40 x 30 mm' } as AskedPart['shape'],
    };
    const { ways, impossible } = waysOf(beam);
    expect(ways.map(({ route }) => route)).toEqual(['large vat']);
    expect(impossible.map(({ route }) => route)).toHaveLength(5);
    expect(impossible[0]?.reason).toMatch(/too large for "small extruder"/);
  });

  it('take a mesh as it suits each process', () => {
    const asked: string[] = [];
    const shapes: ShapeReader = ({ process, path }) => {
      asked.push(`${path} for ${process}`);
      const shape = shapeOfDimensions({ width: 60, depth: 40, height: 30, volume: 18_000 });
      return { kind: 'shape', shape, reason: `suits ${process}`, notes: [] };
    };
    const mesh: AskedPart = {
      finish: 'cleaned',
      shape: { kind: 'mesh', path: 'bracket.stl', unit: 'mm', orientation: 'best' },
    };
    const { ways } = waysOf(mesh, TYPICAL_LAB, shapes);
    expect(new Set(asked)).toEqual(
      new Set(['bracket.stl for MEX', 'bracket.stl for VPP', 'bracket.stl for PBF']),
    );
    expect(ways.find(({ route }) => route === 'small vat')?.stands).toMatch(/suits VPP/);
  });

  it('go by the routes of the lab, whatever it has to do now', () => {
    const text = `
buildweek: 1
hours: { day: { mon-fri: 08:00-16:00 } }
people: { technicians: { hours: day, skills: [run machines, check] } }
machines: { extruder: { class: small MEX } }
routes:
  printed: [build: { on: extruder }, check: { by: check, takes: 5 min per part }]
  repaired: [check: { by: check, takes: 5 min per part }]
parts:
  lever: { route: printed, print: 3 h per build, fits: 4 per build }
  old lever: { route: repaired }
demand:
  lever: { jobs: 5 per week }
  old lever: { jobs: 5 per week }
`;
    const { ways, impossible } = waysOf(BRACKET, text);
    expect(ways.map(({ route, lab }) => [route, lab.demand.length])).toEqual([['printed', 1]]);
    expect(impossible).toEqual([]);
  });
});
