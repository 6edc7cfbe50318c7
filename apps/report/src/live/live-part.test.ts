import { gunzipSync } from 'node:zlib';
import { resultsFixture } from '@buildweek/charts/fixture';
import type { Results } from '@buildweek/results';
import { readScenario, type ShapeReader } from '@buildweek/scenario';
import { expect, test } from 'vitest';
import { bundles } from './bundles.ts';
import { SMALL_BASE } from './fixture/small-base.ts';
import { livePart } from './live-part.ts';
import { playBaseOf } from './shared/play-base.ts';
import { PlanReader } from './shared/read-plan.ts';

const SHAPE = {
  width: 40,
  depth: 30,
  height: 20,
  volume: 9000,
  surface: 5000,
  footprint: 1000,
  overhangArea: 0,
  supportedVolume: 0,
  supportContactArea: 0,
  layerAreas: [900, 900],
  layerPerimeters: [140, 140],
};

const meshes: ShapeReader = ({ path }) => ({
  kind: 'shape',
  shape: { ...SHAPE, volume: path.length * 1000 },
  reason: 'as it stands in the file',
  notes: [],
});

const TEXT = SMALL_BASE.text
  .replace(
    'ring: { route: part, fits: 4 per build, print: 2 h per build }',
    'ring: { route: part, mesh: ring.stl }\n  clip: { route: part, mesh: long-clip.stl }',
  )
  .replace('jobs: 20 per week, pieces: 1 to 4,', 'dates: from orders.csv,')
  .replace('may vary:', '  clip: { jobs: 3 per week, promise: 2 working days }\nmay vary:');
const FILES = [{ path: 'orders.csv', text: '2027-03-01 09:00, 2\n2027-03-02 10:00, 1, rush\n' }];

/** Results of a scenario as far as the page reads them. */
function resultsOf(text: string, files: Results['scenario']['files']): Results {
  const reading = readScenario(text, 'lab.yaml', () => FILES[0]?.text ?? null, meshes);
  if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
  const fixture = resultsFixture();
  return {
    ...fixture,
    scenario: { ...fixture.scenario, text, files },
    lab: JSON.parse(JSON.stringify(reading.lab)),
    assumptions: [...reading.assumptions],
  };
}

test('A page has of meshes and other files what its results have, and reads the same lab without them.', () => {
  const results = resultsOf(TEXT, FILES);
  const base = playBaseOf(results, 'as it is');
  expect(base.shapes.map(({ volume }) => volume)).toEqual([8000, 13_000]);
  const reader = new PlanReader(base);
  expect(reader.plan).toMatchObject({ kind: 'scenario', lab: results.lab });
  expect(reader.read(TEXT.replace('count: 2 }', 'count: 3 }'))).toMatchObject({ kind: 'scenario' });
  // Another place on another machine is not known.
  const turned = reader.read(TEXT.replace('mesh: ring.stl', 'mesh: ring.stl, orientation: as given'));
  expect(turned).toMatchObject({
    kind: 'problems',
    problems: [{ message: 'This page has not got the mesh ring.stl as this change needs it.' }],
  });
  const live = livePart(results, 'as it is');
  expect(live.section.source).toContain('<h2 id="what-if-title">');
  expect(live.data.source).toContain('id="simulator"');
});

test.each([
  ['a file that did not come along', resultsOf(TEXT, []), 'its scenario needs files that did not come along'],
  [
    'another lab than was played',
    { ...resultsOf(TEXT, FILES), lab: resultsOf(SMALL_BASE.text, []).lab },
    'its scenario needs files that did not come along',
  ],
  [
    'other numbers than were played',
    resultsOf(SMALL_BASE.text, []),
    'what was played is not the lab of the scenario alone',
    SMALL_BASE.text.replace('20 per week', '21 per week'),
  ],
])('A page of %s says that it cannot play on, and holds no code.', (_, results, reason, text?: string) => {
  const told = text === undefined ? results : { ...results, scenario: { ...results.scenario, text } };
  const live = livePart(told, 'as it is');
  expect(live.section.source).toBe(`<p class="lede">This page cannot play a changed lab: ${reason}.</p>`);
  expect(live.script).toBeNull();
});

test('The scripts of a page take nothing from Node, evaluate nothing, and end no element of the page.', () => {
  const { page, worker, follow } = bundles();
  const workerScript = gunzipSync(Buffer.from(worker, 'base64')).toString('utf8');
  for (const script of [page, follow, workerScript]) {
    expect(script).not.toMatch(/browser-external|\bfrom\s*["']node:|\brequire\(["']/);
  }
  for (const script of [page, follow]) expect(script).not.toMatch(/<\/script|<!--|\beval\(|new Function/);
});
