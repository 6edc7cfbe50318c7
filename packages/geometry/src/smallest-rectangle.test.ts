import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallestRectangle } from './smallest-rectangle.ts';

function turned(points: readonly (readonly [number, number])[], angle: number) {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return {
    x: Float64Array.from(points, ([x, y]) => x * cosine - y * sine),
    y: Float64Array.from(points, ([x, y]) => x * sine + y * cosine),
  };
}

describe('The smallest rectangle around points', () => {
  test('is found again for a rectangle, however it is turned', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: -0.78, max: 0.78, noNaN: true }),
        (depth, angle) => {
          const { x, y } = turned(
            [
              [0, 0],
              [100, 0],
              [100, depth],
              [0, depth],
              [50, depth / 2],
            ],
            angle,
          );
          const rectangle = smallestRectangle(x, y);
          expect(rectangle.area).toBeCloseTo(100 * depth, 6);
          expect(rectangle.angle).toBeCloseTo(angle, 6);
        },
      ),
    );
  });

  // Smallest square around a regular triangle of side 1: height times side.
  test('of a regular triangle lies along one of its sides', () => {
    const { x, y } = turned(
      [
        [0, 0],
        [1, 0],
        [0.5, Math.sqrt(3) / 2],
      ],
      0.3,
    );
    expect(smallestRectangle(x, y).area).toBeCloseTo(Math.sqrt(3) / 2, 9);
  });

  test('of very many points is found to a thousandth', () => {
    const points = Array.from({ length: 40_000 }, (_, index): [number, number] => [
      index % 200,
      Math.floor(index / 200),
    ]);
    const { x, y } = turned(points, 0.5);
    expect(Math.abs(smallestRectangle(x, y).area / 199 ** 2 - 1)).toBeLessThan(0.005);
  });

  test('of points on a line has no area', () => {
    const { x, y } = turned(
      [
        [0, 0],
        [1, 0],
        [3, 0],
      ],
      0.5,
    );
    expect(smallestRectangle(x, y).area).toBeCloseTo(0, 9);
  });
});
