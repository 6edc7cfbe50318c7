import { array, assert, constantFrom, integer, property, tuple } from 'fast-check';
import { expect, test } from 'vitest';
import { compactPath } from './compact-path.ts';

test.each([
  ['M0.7,42.3L2,40.1L3.3,40.1L4.6,40.1L5.9,38', 'm.7,42.3l1.3-2.2h2.6l1.3-2.1'],
  ['M10,10L20,10L20,30L10,30Z', 'm10,10h10v20h-10z'],
  ['M1,1L2,2ZM5,5L6,6', 'm1,1l1,1zm4,4l1,1'],
  ['M0.04,0L-0.26,0', 'm0,0h-.3'],
])('A polyline is written in relative steps: %s', (path, compact) => {
  expect(compactPath(path)).toBe(compact);
});

test.each(['M0,0h10v20h-10Z', 'M0,5A5,5,0,1,1,0,-5', 'M0,0C1,1,2,2,3,3', 'M0,0LL1,1', ''])(
  'What is no polyline stays as it is: %s',
  (path) => {
    expect(compactPath(path)).toBe(path);
  },
);

/** Corners of a relative polyline, in tenths. */
function cornersOf(path: string): string[] {
  const corners: string[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = '', rest = ''] of path.matchAll(/([mlhvz])([^mlhvz]*)/g)) {
    const numbers = [...rest.matchAll(/-?[\d.]+/g)].map(([text]) => Math.round(Number(text) * 10));
    const [first = 0, second = 0] = numbers;
    if (letter === 'z') [x, y] = [startX, startY];
    else
      [x, y] = [x + (letter === 'v' ? 0 : first), y + (letter === 'v' ? first : letter === 'h' ? 0 : second)];
    if (letter === 'm') [startX, startY] = [x, y];
    corners.push(`${letter === 'm' ? 'm' : letter === 'z' ? 'z' : 'l'}${x},${y}`);
  }
  return corners;
}

test('No step adds up rounding: every corner that is left is one of those given, and both ends are.', () => {
  const point = tuple(integer({ min: -3000, max: 9000 }), integer({ min: -40, max: 40 }));
  assert(
    property(array(point, { minLength: 2, maxLength: 30 }), constantFrom('', 'Z'), (points, end) => {
      const path = `M${points.map(([x, y]) => `${x / 10},${y / 10}`).join('L')}${end}`;
      const corners = cornersOf(compactPath(path));
      const given = points.map(([x, y]) => `${x},${y}`);
      for (const corner of corners) expect(given).toContain(corner.slice(1));
      expect(corners[0]).toBe(`m${given[0]}`);
      const last = corners.at(end === 'Z' ? -2 : -1)?.slice(1);
      expect(last).toBe(given.at(-1));
    }),
  );
});
