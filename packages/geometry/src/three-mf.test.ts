import { serialize } from '@jscad/3mf-serializer';
import modeling from '@jscad/modeling';
import { DOMParser } from 'linkedom';
import { Box3 } from 'three';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { gear } from './demo-shapes/gear.ts';
import { meshBounds } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { readMesh } from './mesh-file.ts';
import { inspectMesh } from './mesh-inspection.ts';
import { solidOf } from './solid.ts';
import { boxObject, modelOf, packageOf } from './test-data/package.ts';
import { box } from './test-data/shapes.ts';
import { readThreeMf } from './three-mf.ts';
import { writeThreeMf } from './three-mf-writer.ts';

const CUBE = boxObject(1, [10, 20, 30]);

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('3MF written by hand after the core specification', () => {
  // G12; 3MF Core Specification 1.4.0, ST_Unit; mm is the default.
  test.each([
    ['unit="micron"', 'micron', 0.001],
    ['', 'mm', 1],
    ['unit="millimeter"', 'mm', 1],
    ['unit="centimeter"', 'cm', 10],
    ['unit="inch"', 'inch', 25.4],
    ['unit="foot"', 'foot', 304.8],
    ['unit="meter"', 'm', 1000],
  ])('with %s has its lengths turned into mm', (attribute, unit, millimetres) => {
    const content = readThreeMf(packageOf(modelOf(CUBE, '<item objectid="1"/>', attribute)));
    expect(content.unit).toBe(unit);
    expect(meshBounds(content.mesh).high[2]).toBeCloseTo(30 * millimetres, 9);
    expect(solidOf(content.mesh).volume / (6000 * millimetres ** 3)).toBeCloseTo(1, 9);
  });

  // Section 3.3: points are rows, multiplied from the left; x goes to y, y to -x, then the shift.
  test('places an item by its transform', () => {
    const item = '<item objectid="1" transform="0 1 0 -1 0 0 0 0 1 100 0 5"/>';
    const { low, high } = meshBounds(readThreeMf(packageOf(modelOf(CUBE, item))).mesh);
    expect(low).toEqual([80, 0, 5]);
    expect(high).toEqual([100, 10, 35]);
  });

  test('does the transform of a component first, then that of the object around it, then that of the item', () => {
    const objects = `${CUBE}
      <object id="2"><components>
        <component objectid="1" transform="1 0 0 0 1 0 0 0 1 1 0 0"/>
        <component objectid="1" transform="1 0 0 0 1 0 0 0 1 50 0 0"/>
      </components></object>
      <object id="3"><components><component objectid="2" transform="2 0 0 0 2 0 0 0 2 0 7 0"/></components></object>`;
    const item = '<item objectid="3" transform="0 1 0 -1 0 0 0 0 1 0 0 0"/>';
    const content = readThreeMf(packageOf(modelOf(objects, item)));
    // x from 1 to 60, y from 0 to 20, z from 0 to 30; doubled and moved by 7 along y; turned by a quarter.
    const { low, high } = meshBounds(content.mesh);
    expect(low).toEqual([-47, 2, 0]);
    expect(high).toEqual([-7, 120, 60]);
    expect(solidOf(content.mesh).volume).toBeCloseTo(2 * 8 * 6000, 6);
    expect(inspectMesh(content.mesh).defects.openEdges).toBe(0);
  });

  test('measures several items together and says so', () => {
    const items = '<item objectid="1"/><item objectid="1" transform="1 0 0 0 1 0 0 0 1 30 0 0"/>';
    const file = readMesh(packageOf(modelOf(CUBE, items)), 'two.3mf');
    expect(solidOf(file.mesh).volume).toBeCloseTo(12000, 9);
    expect(file.notes[0]).toMatch(/^The file places 2 items on the platform: they are measured together/);
  });

  test('turns a mirror image right side out', () => {
    const item = '<item objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/>';
    expect(solidOf(readThreeMf(packageOf(modelOf(CUBE, item))).mesh).volume).toBeCloseTo(6000, 9);
  });

  test('leaves out supports and surfaces and says so', () => {
    const objects = CUBE + boxObject(2, [5, 5, 5], 'support');
    const file = readMesh(packageOf(modelOf(objects, '<item objectid="1"/><item objectid="2"/>')), 'a.3mf');
    expect(solidOf(file.mesh).volume).toBeCloseTo(6000, 9);
    expect(file.notes).toContain(
      '1 objects of the file are supports or surfaces, not the part, and were left out.',
    );
  });

  test('ignores a unit that is given beside that of the file and says so', () => {
    const file = readMesh(packageOf(modelOf(CUBE, '<item objectid="1"/>')), 'a.3mf', { unit: 'inch' });
    expect(file.unit).toBe('mm');
    expect(file.notes).toEqual(['The file states its unit, mm; the unit inch that was given is not used.']);
  });

  test('follows objects in other files of the package (3MF Production Extension)', () => {
    const other = modelOf(CUBE, '');
    const root = modelOf(
      '<object id="9"><components><component objectid="1" p:path="/3D/Objects/one.model" transform="1 0 0 0 1 0 0 0 1 4 0 0"/></components></object>',
      '<item objectid="9"/>',
      'requiredextensions="p"',
    );
    const { mesh } = readThreeMf(packageOf(root, { '3D/Objects/one.model': other }));
    expect(meshBounds(mesh)).toEqual({ low: [4, 0, 0], high: [14, 20, 30] });
  });

  test('may give the core namespace a prefix', () => {
    const model = modelOf(CUBE, '<item objectid="1"/>')
      .replace('xmlns=', 'xmlns:c=')
      .replace(/<(\/?)([a-z])/g, '<$1c:$2');
    expect(solidOf(readThreeMf(packageOf(model)).mesh).volume).toBeCloseTo(6000, 9);
  });

  test('skips what extensions add', () => {
    const objects = `<p:triangle v1="x"/>${CUBE}<metadata name="a">text</metadata>`;
    expect(solidOf(readThreeMf(packageOf(modelOf(objects, '<item objectid="1"/>'))).mesh).volume).toBeCloseTo(
      6000,
      9,
    );
  });
});

describe('3MF that breaks the specification', () => {
  const loop = (id: number, inner: number) =>
    `<object id="${id}"><components><component objectid="${inner}"/></components></object>`;
  const chain = (length: number) =>
    CUBE + Array.from({ length }, (_, index) => loop(index + 2, index + 1)).join('');
  const bomb = `${CUBE}${Array.from({ length: 12 }, (_, index) => `<object id="${index + 2}"><components>${`<component objectid="${index + 1}"/>`.repeat(10)}</components></object>`).join('')}`;

  test.each([
    ['an object that contains itself', loop(1, 1), '<item objectid="1"/>', 'Object 1 contains itself.'],
    [
      'objects that contain each other',
      loop(1, 2) + loop(2, 1),
      '<item objectid="1"/>',
      'Object 1 contains itself.',
    ],
    [
      'components nested too deep',
      chain(70),
      '<item objectid="71"/>',
      'Components are nested more than 64 deep.',
    ],
    [
      'a few lines that ask for very much',
      bomb,
      '<item objectid="13"/>',
      /^The file holds [\d,]+ triangles; at most 10,000,000 are read\./,
    ],
    ['a missing object', CUBE, '<item objectid="7"/>', 'The file uses object 7 and does not hold it.'],
    ['no item', CUBE, '', 'The file places nothing on the platform: its build has no item.'],
    [
      'two objects of one number',
      CUBE + CUBE,
      '<item objectid="1"/>',
      'it holds two objects with the number 1.',
    ],
    [
      'a short transform',
      CUBE,
      '<item objectid="1" transform="1 0 0"/>',
      'has the transform "1 0 0", and a transform is twelve numbers.',
    ],
    [
      'a flattening transform',
      CUBE,
      '<item objectid="1" transform="1 0 0 0 1 0 0 0 0 0 0 0"/>',
      'has a transform that flattens the part.',
    ],
    [
      'a vertex that is not there',
      CUBE.replace('v1="0"', 'v1="8"'),
      '<item objectid="1"/>',
      'Triangle 1 of object 1 uses vertex 8, and there are 8 (numbered from 0).',
    ],
    [
      'a negative vertex number',
      CUBE.replace('v1="0"', 'v1="-1"'),
      '<item objectid="1"/>',
      'a triangle has the vertex number "-1"',
    ],
    [
      'a coordinate that is no number',
      CUBE.replace('x="10"', 'x="NaN"'),
      '<item objectid="1"/>',
      'a vertex has the coordinate "NaN"',
    ],
    [
      'a missing coordinate',
      CUBE.replace('x="10"', ''),
      '<item objectid="1"/>',
      'a vertex has the coordinate ""',
    ],
    [
      'a place beyond all parts',
      CUBE,
      '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 1e9 0 0"/>',
      'which is no place in a part.',
    ],
  ])('by %s is refused', (_what, objects, items, message) => {
    const bytes = packageOf(modelOf(objects, items));
    expect(() => readThreeMf(bytes)).toThrow(MeshError);
    expect(() => readThreeMf(bytes)).toThrow(message);
  });

  test('by an unknown unit, a document type, broken XML or an extension that is needed is refused', () => {
    const model = modelOf(CUBE, '<item objectid="1"/>');
    const texts: [string, string][] = [
      [model.replace('millimeter', 'parsec'), 'it states the unit "parsec", which 3MF does not know.'],
      [
        model.replace('?>', '?><!DOCTYPE model [<!ENTITY a "b">]>'),
        'it has a document type, which 3MF forbids.',
      ],
      [model.replace('</resources>', ''), 'its XML is broken:'],
      [model.slice(0, -20), 'its XML is broken:'],
      [
        model.replace('<model', '<model requiredextensions="q" xmlns:q="http://example.org/beams"'),
        'The file needs the 3MF extension http://example.org/beams',
      ],
      ['<html/>', 'it begins with html where model should be.'],
      ['', 'its XML is broken:'],
    ];
    for (const [text, message] of texts) expect(() => readThreeMf(packageOf(text))).toThrow(message);
  });

  test('by files of different units is refused', () => {
    const root = modelOf('', '<item objectid="1" p:path="/3D/one.model"/>', 'unit="inch"');
    const bytes = packageOf(root, { '3D/one.model': modelOf(CUBE, '') });
    expect(() => readThreeMf(bytes)).toThrow('The model files of the package state different units.');
  });

  test('by holding supports only is refused', () => {
    const bytes = packageOf(modelOf(boxObject(1, [1, 1, 1], 'support'), '<item objectid="1"/>'));
    expect(() => readMesh(bytes, 'a.3mf')).toThrow('a.3mf: The file holds no triangle.');
  });
});

describe('3MF and other libraries', () => {
  test('three reads what is written here: box, corners and triangles', () => {
    vi.stubGlobal('DOMParser', DOMParser);
    const mesh = gear();
    const bytes = writeThreeMf(mesh, 'gear & "wheel" <1>');
    const group = new ThreeMFLoader().parse(bytes.slice().buffer);
    const bounds = new Box3().setFromObject(group);
    const { low, high } = meshBounds(mesh);
    expect(bounds.min.toArray()).toEqual(low.map(Math.fround));
    expect(bounds.max.toArray()).toEqual(high.map(Math.fround));
    let triangles = 0;
    group.traverse((object) => {
      if ('geometry' in object) {
        const { index } = object.geometry as { index: { count: number } };
        triangles += index.count / 3;
      }
    });
    expect(triangles).toBe(mesh.triangles.length / 3);
  });

  test.each([
    ['millimeter', 1],
    ['inch', 25.4],
  ])('what another library writes in %s is read as it measures it', (unit, millimetres) => {
    const { primitives, transforms, booleans, measurements } = modeling;
    const drilled = booleans.subtract(
      primitives.cuboid({ size: [40, 30, 20] }),
      primitives.cylinder({ radius: 6, height: 30, segments: 24 }),
    );
    const ball = transforms.translate([60, 0, 5], primitives.geodesicSphere({ radius: 9, frequency: 12 }));
    // It rounds coordinates to some ten-thousandths before it writes them.
    const [piece = new ArrayBuffer(0)] = serialize({ unit }, drilled, ball);
    const file = readMesh(new Uint8Array(piece), 'written.3mf');
    const volume = measurements.measureVolume(drilled) + measurements.measureVolume(ball);
    expect(solidOf(file.mesh).volume / millimetres ** 3 / volume).toBeCloseTo(1, 4);
    const boxes = measurements.measureAggregateBoundingBox(drilled, ball);
    const { low, high } = meshBounds(file.mesh);
    for (let axis = 0; axis < 3; axis++) {
      expect(low[axis] / millimetres).toBeCloseTo(boxes[0][axis], 3);
      expect(high[axis] / millimetres).toBeCloseTo(boxes[1][axis], 3);
    }
  });

  test('equal meshes give equal bytes', () => {
    expect(writeThreeMf(box(1, 2, 3), 'a')).toEqual(writeThreeMf(box(1, 2, 3), 'a'));
  });
});
