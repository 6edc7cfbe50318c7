import { describe, expect, test } from 'vitest';
import { bestOrientation } from './best-orientation.ts';
import { bracket } from './demo-shapes/bracket.ts';
import { orientations } from './orientations.ts';
import {
  box,
  cone,
  extruded,
  icosphere,
  moved,
  regularPolygon,
  together,
  turnedAboutZ,
} from './test-data/shapes.ts';

describe('The best orientation of a part', () => {
  test('lays a plate that stands on edge flat, and says what that saves', () => {
    for (const process of ['MEX', 'VPP', 'PBF'] as const) {
      const { best, given, reason } = bestOrientation(box(60, 20, 40), process);
      expect(best.shape.height).toBeCloseTo(20, 9);
      expect(given.shape.height).toBe(40);
      expect(reason).toBe(
        'Built with the y axis of the file up: lowest (20 mm high instead of 40 mm), on 40 mm x 60 mm instead of 60 mm x 20 mm.',
      );
    }
  });

  test('turns a mushroom on its head to save supports', () => {
    const mushroom = together(box(20, 20, 30, [20, 10, 0]), box(60, 40, 5, [0, 0, 30]));
    const { best, reason } = bestOrientation(mushroom, 'MEX');
    expect(best.orientation.name).toBe('upside down');
    expect(reason).toMatch(
      /^Built upside down: least support \(none instead of [\d.]+ cm3\), lowest \(35 mm high\)\.$/,
    );
  });

  test('keeps the orientation of the file when no other one is better', () => {
    const { best, given, reason } = bestOrientation(box(60, 40, 5), 'PBF');
    expect(best).toBe(given);
    expect(reason).toMatch(/^Best as given, of \d+ orientations: lowest \(5\.0 mm high\)\.$/);
  });

  test('lays a part on a flat face that is oblique in the file', () => {
    const tilted = moved(box(60, 40, 5), ([x, y, z]) => {
      const [cosine, sine] = [Math.cos(0.5), Math.sin(0.5)];
      return [x * cosine - z * sine, y, x * sine + z * cosine];
    });
    const { best } = bestOrientation(tilted, 'MEX');
    expect(best.orientation.name).toBe('on a flat face that is oblique in the file');
    expect(best.shape.height).toBeCloseTo(5, 6);
    expect(best.shape.width * best.shape.depth).toBeCloseTo(60 * 40, 4);
    expect(best.isFirm).toBe(true);
  });

  test('turns a part about the vertical where that saves platform', () => {
    const names = orientations(turnedAboutZ(box(60, 20, 5), 0.6)).map(({ name }) => name);
    expect(names).toContain('as given, turned about the vertical');
    const { best } = bestOrientation(turnedAboutZ(box(60, 20, 5), 0.6), 'MEX');
    expect([best.shape.width, best.shape.depth].sort((one, other) => one - other)[0]).toBeCloseTo(20, 6);
  });

  test('does not balance a cone on its tip when it is extruded', () => {
    const onTip = moved(cone(64, 10, 40), ([x, y, z]) => [x, -y, -z]);
    const { best, reason } = bestOrientation(onTip, 'MEX');
    expect(best.orientation.name).toBe('upside down');
    expect(reason).toMatch(/^As given it does not stand firmly\. Built upside down: /);
  });

  test('is one that fits the build space, and the reason says so', () => {
    const plate = box(150, 150, 10);
    const narrow = { width: 200, depth: 20, height: 200 };
    const { best, reason } = bestOrientation(plate, 'MEX', narrow);
    expect(best.fits).toBe(true);
    expect(best.shape.height).toBeCloseTo(150, 9);
    expect(reason).toMatch(/^As given, 150 x 150 x 10 mm, it does not fit the build space\. Built /);
  });

  test('may be turned by a quarter to fit', () => {
    const { best } = bestOrientation(box(150, 50, 10), 'MEX', { width: 60, depth: 160, height: 20 });
    expect(best.fits).toBe(true);
    expect(best.orientation.name).toBe('as given');
  });

  test('fits a build space that it fills exactly, also where a file has rounded its corners', () => {
    // As a binary STL file has them: 0.1 and 250.1 in 32 bits are 250.000006 apart.
    const bar = moved(box(250, 20, 20, [0.1, 0, 0]), ([x, y, z]) => [Math.fround(x), y, z]);
    const { best, given } = bestOrientation(bar, 'MEX', { width: 250, depth: 20, height: 300 });
    expect(given.shape.width).toBeGreaterThan(250);
    expect(given.fits).toBe(true);
    expect(best).toBe(given);
    const longer = bestOrientation(box(250.001, 20, 20), 'MEX', { width: 250, depth: 20, height: 300 });
    expect(longer.given.fits).toBe(false);
  });

  test('says that a part is too big in all orientations', () => {
    const { best, reason } = bestOrientation(box(150, 150, 150), 'PBF', {
      width: 100,
      depth: 100,
      height: 100,
    });
    expect(best.fits).toBe(false);
    expect(reason).toMatch(
      /^Too big for the build space in all \d+ orientations that were tried; 150 x 150 x 150 mm/,
    );
  });

  test('needs no supports in a powder bed', () => {
    const { best } = bestOrientation(bracket(), 'PBF');
    expect(best.shape.supportedVolume).toBe(0);
    expect(best.shape.supportContactArea).toBe(0);
    expect(bestOrientation(bracket(), 'MEX').given.shape.supportedVolume).toBeGreaterThan(0);
  });

  test('has proper rotations only: lengths and handedness stay', () => {
    const parts = [bracket(), icosphere(1), extruded(regularPolygon(5, 30), 8)];
    for (const { rotation } of parts.flatMap(orientations)) {
      const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = rotation;
      expect(Math.hypot(xx, xy, xz)).toBeCloseTo(1, 9);
      expect(Math.hypot(yx, yy, yz)).toBeCloseTo(1, 9);
      const volume = xx * (yy * zz - yz * zy) - xy * (yx * zz - yz * zx) + xz * (yx * zy - yy * zx);
      expect(volume).toBeCloseTo(1, 9);
    }
  });
});
