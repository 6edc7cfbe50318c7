import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readMesh } from '../mesh-file.ts';
import { inspectMesh } from '../mesh-inspection.ts';
import { AS_GIVEN } from '../oriented-mesh.ts';
import { measure } from '../part-measures.ts';
import { demoMeshes } from './demo-meshes.ts';

const FOLDER = new URL('../../../../scenarios/parts/', import.meta.url);

describe('The invented parts of the examples', () => {
  test('are in the repository exactly as they are made (npm run make-meshes -w @buildweek/geometry)', () => {
    const made = demoMeshes();
    const meshFiles = readdirSync(FOLDER).filter((name) => /\.(stl|3mf)$/.test(name));
    expect(meshFiles.sort()).toEqual([...made.keys()].sort());
    for (const [name, bytes] of made) {
      expect(Buffer.from(bytes).equals(readFileSync(new URL(name, FOLDER))), name).toBe(true);
      expect(bytes.length).toBeLessThan(200_000);
    }
  });

  test.each([
    ['bracket.stl', 'binary STL', [60, 30, 40]],
    ['duct.stl', 'binary STL', [90, 40, 40]],
    ['gear.3mf', '3MF', [30, 29.736, 10]],
    ['housing.3mf', '3MF', [120, 80, 35]],
    ['jig.stl', 'ASCII STL', [140, 60, 25]],
  ])('%s is a closed %s that faces outwards', (name, format, sides) => {
    const file = readMesh(demoMeshes().get(name) ?? new Uint8Array(), name);
    expect(file.format).toBe(format);
    const inspection = inspectMesh(file.mesh);
    expect(inspection.warnings).toEqual([]);
    expect(inspection.notes).toEqual([]);
    const { width, depth, height, volume } = measure(inspection.mesh, AS_GIVEN);
    [width, depth, height].forEach((side, axis) => {
      expect(side).toBeCloseTo(sides[axis], 3);
    });
    expect(volume).toBeGreaterThan(4000);
  });
});
