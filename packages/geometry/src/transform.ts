import { MeshError } from './mesh-error.ts';

/**
 * An affine map as 3MF writes it: m00 m01 m02 m10 m11 m12 m20 m21 m22 m30 m31 m32, points being rows multiplied from
 * the left (3MF Core Specification 1.4.0, section 3.3).
 */
export type Transform = readonly number[];

const IDENTITY: Transform = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

/** The map that does `first` and then `second`. */
export function composed(first: Transform, second: Transform): Transform {
  const result: number[] = [];
  for (let row = 0; row < 4; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = row === 3 ? second[9 + column] : 0;
      for (let inner = 0; inner < 3; inner++) sum += first[3 * row + inner] * second[3 * inner + column];
      result.push(sum);
    }
  }
  return result;
}

/** Factor by which the map changes volumes; negative for a mirror image. */
export function determinant(map: Transform): number {
  return (
    map[0] * (map[4] * map[8] - map[5] * map[7]) -
    map[1] * (map[3] * map[8] - map[5] * map[6]) +
    map[2] * (map[3] * map[7] - map[4] * map[6])
  );
}

/** @throws MeshError unless the text is twelve numbers of a map that keeps volume. */
export function parseTransform(text: string | undefined, where: string): Transform {
  if (text === undefined) return IDENTITY;
  const numbers = text.trim().split(/\s+/).map(Number);
  if (numbers.length !== 12 || numbers.some((value) => !Number.isFinite(value))) {
    throw new MeshError(
      `${where} has the transform "${text.slice(0, 80)}", and a transform is twelve numbers.`,
      'The file breaks the 3MF specification: export the part again.',
    );
  }
  if (determinant(numbers) === 0) {
    throw new MeshError(
      `${where} has a transform that flattens the part.`,
      'Give the part its size back and export it again.',
    );
  }
  return numbers;
}
