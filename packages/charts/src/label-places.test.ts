import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LABEL_GAP, type PointLabel, placeLabels } from './label-places.ts';

const ROOM = { width: 400, height: 300 };
const label = (x: number, y: number, isWanted = false): PointLabel => ({
  x,
  y,
  width: 30,
  height: 12,
  isWanted,
});

test('a label stands right above its point where there is room, else at another corner', () => {
  expect(placeLabels([label(100, 100)], ROOM)).toEqual([{ side: 'right', end: 'above' }]);
  expect(placeLabels([label(390, 100)], ROOM)).toEqual([{ side: 'left', end: 'above' }]);
  expect(placeLabels([label(100, 5)], ROOM)).toEqual([{ side: 'right', end: 'below' }]);
  // A point stands where the label of the first would.
  expect(placeLabels([label(100, 100), label(120, 90)], ROOM)[0]).toEqual({ side: 'right', end: 'below' });
});

test('the first label of a crowd stands, and those without room are left out', () => {
  const crowd = Array.from({ length: 12 }, (_, index) => label(200 + index, 150));
  const places = placeLabels(crowd, ROOM);
  expect(places[0]).not.toBeNull();
  expect(places.filter((place) => place !== null).length).toBeLessThanOrEqual(4);
});

test('a label that is wanted covers points where it must', () => {
  const ring = [-20, 20].flatMap((x) => [-10, 10].map((y) => label(100 + x, 100 + y)));
  expect(placeLabels([label(100, 100), ...ring], ROOM)[0]).toBeNull();
  expect(placeLabels([label(100, 100, true), ...ring], ROOM)[0]).toEqual({ side: 'right', end: 'above' });
});

test('no label covers another, and none leaves the drawing', () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 300 })), {
    maxLength: 30,
  });
  fc.assert(
    fc.property(points, (drawn) => {
      const labels = drawn.map(([x, y], index) => label(x, y, index < 2));
      const boxes = placeLabels(labels, ROOM).flatMap((place, index) => {
        const own = labels[index];
        if (place === null || own === undefined) return [];
        const left = place.side === 'right' ? own.x + LABEL_GAP.across : own.x - LABEL_GAP.across - own.width;
        const top = place.end === 'above' ? own.y - LABEL_GAP.along - own.height : own.y + LABEL_GAP.along;
        return [{ left, top }];
      });
      for (const [index, box] of boxes.entries()) {
        expect(box.left >= 0 && box.left + 30 <= 400 && box.top >= 0 && box.top + 12 <= 300).toBe(true);
        for (const other of boxes.slice(index + 1)) {
          expect(Math.abs(box.left - other.left) >= 30 || Math.abs(box.top - other.top) >= 12).toBe(true);
        }
      }
    }),
    { seed: 20261125 },
  );
});
