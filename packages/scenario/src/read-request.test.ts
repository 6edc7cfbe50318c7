import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type AskedRequest, readRequest } from './read-request.ts';
import { readScenario } from './read-scenario.ts';
import type { ShapeReader } from './shape-reader.ts';
import type { Finish } from './words/finish.ts';

const noMeshes: ShapeReader = () => ({ kind: 'refused', message: 'No mesh is asked for.', write: '' });

const LAB = `
buildweek: 1
starts: 2027-03-01
hours: { day: { mon-fri: 08:00-16:00 } }
people: { technicians: { count: 1, skills: [prepare, run machines, hand work] } }
machines:
  printers: { class: small MEX, count: 2, loaded: black }
  vats: { class: small mask VPP, count: 1 }
routes:
  printed:
    - prepare: { by: prepare, takes: 15 min }
    - build: { on: printers }
    - sand: { by: hand work, takes: 5 min per part, may pause: yes, for finish: smooth }
  cured:
    - build: { on: vats }
    - clean: { by: hand work, takes: 2 min per part }
  glued: [{ glue: { by: hand work, takes: 1 h } }]
parts:
  lever: { route: printed, size: 40 x 30 x 20 mm, volume: 8 cm3, material: black }
  ring: { route: cured, size: 40 x 40 x 10 mm, volume: 5 cm3, material: grey, settings: fine }
  block: { route: glued }
demand:
  levers: { part: lever, jobs: 5 per week, promise: 3 working days, rush: 10 %, rush promise: 1 working days }
  ring: { jobs: 2 per week, promise: 48 h }
  block: { jobs: 1 per week }
`;

const LEVER: AskedRequest = { part: { kind: 'of the file', name: 'lever' }, finish: null, material: null };
const NEW: AskedRequest = {
  part: {
    kind: 'new',
    shape: {
      kind: 'size',
      size: '30 x 30 x 30 mm',
      volume: '9 cm3',
      surface: '54 cm2',
      supportedVolume: '0 mm3',
      supportContact: '0 mm2',
    },
  },
  finish: null,
  material: null,
};

function ask(
  asked: AskedRequest,
  finishes: readonly Finish[] = ['cleaned', 'smooth', 'as printed'],
  text = LAB,
) {
  return readRequest(text, 'lab.yaml', asked, finishes, null, noMeshes);
}

describe('A request', () => {
  it('is asked of a file without a fault', () => {
    expect(readScenario(LAB, 'lab.yaml')).toMatchObject({ kind: 'scenario' });
  });

  it('is put beside everything that the lab has to do, on every route with a build, and brings no other jobs', () => {
    const reading = readScenario(LAB, 'lab.yaml');
    const lab = reading.kind === 'scenario' ? reading.lab : null;
    const { ways, impossible } = ask(NEW, ['cleaned']);
    expect(impossible).toEqual([]);
    expect(ways.map(({ route, isOwn }) => [route, isOwn])).toEqual([
      ['printed', false],
      ['cured', false],
    ]);
    for (const way of ways) {
      expect(way.lab.parts.slice(0, -1)).toEqual(lab?.parts);
      expect(way.lab.demand.slice(0, -1)).toEqual(lab?.demand);
      expect({ ...way.lab, parts: [], demand: [] }).toEqual({ ...lab, parts: [], demand: [] });
      expect(way.lab.demand.at(-1)).toMatchObject({
        name: 'new request',
        part: 'new request',
        arrivals: { kind: 'dated', jobs: [] },
      });
    }
  });

  it('for a part of the file is that part, and has its promise', () => {
    const { ways, promisedAs } = ask(LEVER, ['cleaned']);
    expect(promisedAs).toBe('levers');
    const own = ways.find(({ isOwn }) => isOwn);
    const { name: _, ...part } = own?.lab.parts.at(-1) ?? { name: '' };
    const { name: __, ...lever } = own?.lab.parts[0] ?? { name: '' };
    expect(part).toEqual(lever);
    expect(own?.lab.demand.at(-1)).toMatchObject({
      due: { kind: 'working days', days: 3 },
      rushDue: { kind: 'working days', days: 1 },
    });
  });

  it('is made on other routes of what parts there are made of, or of what was asked for', () => {
    const materials = (asked: AskedRequest) =>
      ask(asked, ['cleaned']).ways.map(({ material, lab }) => [material, lab.parts.at(-1)?.settings]);
    expect(materials(LEVER)).toEqual([
      ['black', 'standard'],
      ['grey', 'fine'],
    ]);
    expect(materials({ ...LEVER, material: 'clear' }).map(([material]) => material)).toEqual([
      'clear',
      'clear',
    ]);
  });

  it('is read with other finishes where they make a difference: on its own route, or on all of a new part', () => {
    const finishes = (asked: AskedRequest) =>
      ask(asked).ways.map(({ route, finish }) => `${route}, ${finish}`);
    // Sanding is for smooth parts only; as printed and cleaned are the same here.
    expect(finishes(LEVER)).toEqual(['printed, cleaned', 'printed, smooth', 'cured, cleaned']);
    expect(finishes(NEW)).toEqual(['printed, cleaned', 'printed, smooth', 'cured, cleaned']);
  });

  it('for a part whose print time is typed stays on its route, and says why', () => {
    const typed = LAB.replace(
      'size: 40 x 30 x 20 mm, volume: 8 cm3, material: black',
      'fits: 8 per build, print: 3 h per build',
    ).replace(
      'class: small MEX',
      'start: at once, set-up: { by: prepare, takes: 5 min }, unload: { by: prepare, takes: 5 min }',
    );
    const { ways, impossible } = ask(LEVER, ['cleaned'], typed);
    expect(ways.map(({ route }) => route)).toEqual(['printed']);
    expect(impossible.map(({ route }) => route)).toEqual(['cured', 'glued']);
    expect(impossible[0]?.reason).toMatch(/a mesh or a size would do/);
  });

  it('knows how long work takes outside where the file says it, for all work or for a demand', () => {
    const leadTime = (text: string) =>
      ask(LEVER, ['cleaned'], text).ways[0]?.lab.demand.at(-1)?.sentOut?.leadTime;
    expect(leadTime(LAB)).toBeUndefined();
    expect(leadTime(`${LAB}sent out: { takes: 4 working days }\n`)).toMatchObject({ kind: 'working days' });
    const own = LAB.replace('promise: 48 h', 'promise: 48 h, sent out: { when: always, takes: 60 h }');
    expect(leadTime(own)).toMatchObject({ kind: 'clock' });
  });

  it('takes a name that nothing else has', () => {
    const taken = LAB.replace('  block: { route: glued }', '  new request: { route: glued }').replace(
      '  block: { jobs',
      '  new request: { jobs',
    );
    expect(ask(NEW, ['cleaned'], taken).ways[0]?.name).toBe('new request 2');
  });

  it('works on the demo, which speaks of money', () => {
    const demo = readFileSync(new URL('../../../scenarios/demo.yaml', import.meta.url), 'utf8').replace(
      /mesh: \S+?(, unit: mm)?(?=,)/g,
      'size: 40 x 30 x 20 mm, volume: 8 cm3, support contact: 2 cm2, supported volume: 1 cm3, surface: 60 cm2',
    );
    const { ways, impossible } = ask(
      { ...LEVER, part: { kind: 'of the file', name: 'bracket' } },
      ['smooth'],
      demo,
    );
    expect(ways.map(({ route }) => route)).toEqual(['resin part']);
    expect(impossible[0]?.reason).toBe('No stage of the route makes a part smooth.');
  });
});
