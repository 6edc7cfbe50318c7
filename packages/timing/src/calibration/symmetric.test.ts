import { describe, expect, it } from 'vitest';
import { inverseOfSymmetric } from './symmetric.ts';

describe('inverseOfSymmetric', () => {
  // N. J. Higham, Accuracy and Stability of Numerical Algorithms, section 28.1: the inverse has whole numbers.
  it('inverts the Hilbert matrix of order 3', () => {
    const hilbert = [0, 1, 2].map((row) => [0, 1, 2].map((column) => 1 / (row + column + 1)));
    const inverse = inverseOfSymmetric(hilbert);
    const expected = [
      [9, -36, 30],
      [-36, 192, -180],
      [30, -180, 180],
    ];
    for (let row = 0; row < 3; row++) {
      for (let column = 0; column < 3; column++) {
        expect(inverse?.[row][column]).toBeCloseTo(expected[row][column], 9);
      }
    }
  });

  it('does not depend on the units of the columns', () => {
    const inverse = inverseOfSymmetric([
      [2e16, 1],
      [1, 2e-16],
    ]);
    expect(inverse?.[0][0]).toBeCloseTo(2e-16 / 3, 30);
    expect(inverse?.[1][1]).toBeCloseTo(2e16 / 3, -6);
  });

  it('says when a matrix is singular', () => {
    expect(
      inverseOfSymmetric([
        [4, 6],
        [6, 9],
      ]),
    ).toBeNull();
    expect(inverseOfSymmetric([[0]])).toBeNull();
  });
});
