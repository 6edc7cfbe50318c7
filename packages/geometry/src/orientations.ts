import { flatFaces } from './flat-faces.ts';
import type { Mesh } from './mesh.ts';
import { AS_GIVEN, type Rotation } from './oriented-mesh.ts';
import { smallestRectangle } from './smallest-rectangle.ts';

/** A way for a part to stand on the platform. */
export interface Orientation {
  /** In words that go on from "the part": "as given", "with the -x side of the file up". */
  readonly name: string;
  readonly rotation: Rotation;
}

type Direction = readonly [number, number, number];

const AXES: readonly (readonly [string, Direction])[] = [
  ['upside down', [0, 0, -1]],
  ['with the x axis of the file up', [1, 0, 0]],
  ['with the x axis of the file down', [-1, 0, 0]],
  ['with the y axis of the file up', [0, 1, 0]],
  ['with the y axis of the file down', [0, -1, 0]],
];

/** Flat faces that are tried beside the six axes. */
const MOST_FLAT_FACES = 6;
/** Directions nearer than two degrees count as one. */
const SAME_DIRECTION = Math.cos(Math.PI / 90);
/** A turn about the vertical must save this share of the rectangle on the platform to be worth it. */
const WORTHWHILE_TURN = 0.01;

/**
 * The small set of orientations that is tried: as given, each of the six axes up, and lying on each of the largest
 * flat faces. All but the first are turned about the vertical so that the rectangle on the platform is smallest,
 * where that saves at least one hundredth of it.
 */
export function orientations(mesh: Mesh): Orientation[] {
  const result: Orientation[] = [{ name: 'as given', rotation: AS_GIVEN }];
  const turned = turnedToSmallestRectangle(mesh, AS_GIVEN);
  if (turned !== AS_GIVEN) result.push({ name: 'as given, turned about the vertical', rotation: turned });
  const directions: Direction[] = [[0, 0, 1]];
  for (const [name, up] of AXES) {
    directions.push(up);
    result.push({ name, rotation: turnedToSmallestRectangle(mesh, rotationWithUp(up)) });
  }
  for (const { normal } of flatFaces(mesh, MOST_FLAT_FACES)) {
    const up: Direction = [-normal[0], -normal[1], -normal[2]];
    const isKnown = directions.some((other) => dot(up, other) > SAME_DIRECTION);
    if (isKnown) continue;
    directions.push(up);
    result.push({
      name: 'on a flat face that is oblique in the file',
      rotation: turnedToSmallestRectangle(mesh, rotationWithUp(up)),
    });
  }
  return result;
}

/** A rotation that brings the direction, a unit vector of the file, to the vertical. */
function rotationWithUp(up: Direction): Rotation {
  const [x, y, z] = up;
  // The axis that is farthest from the vertical becomes the ground for the first row.
  const smallest = Math.min(Math.abs(x), Math.abs(y), Math.abs(z));
  const reference: Direction =
    Math.abs(x) === smallest ? [1, 0, 0] : Math.abs(y) === smallest ? [0, 1, 0] : [0, 0, 1];
  const across = cross(reference, up);
  const length = Math.hypot(...across);
  const first: Direction = [across[0] / length, across[1] / length, across[2] / length];
  return [...first, ...cross(up, first), x, y, z];
}

function turnedToSmallestRectangle(mesh: Mesh, rotation: Rotation): Rotation {
  const { positions } = mesh;
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = rotation;
  const x = new Float64Array(positions.length / 3);
  const y = new Float64Array(positions.length / 3);
  for (let vertex = 0; vertex < x.length; vertex++) {
    const at = 3 * vertex;
    x[vertex] = xx * positions[at] + xy * positions[at + 1] + xz * positions[at + 2];
    y[vertex] = yx * positions[at] + yy * positions[at + 1] + yz * positions[at + 2];
  }
  const { angle, area } = smallestRectangle(x, y);
  const straight = extent(x) * extent(y);
  if (area > (1 - WORTHWHILE_TURN) * straight) return rotation;
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return [
    cosine * xx + sine * yx,
    cosine * xy + sine * yy,
    cosine * xz + sine * yz,
    cosine * yx - sine * xx,
    cosine * yy - sine * xy,
    cosine * yz - sine * xz,
    zx,
    zy,
    zz,
  ];
}

function extent(values: Float64Array): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}

function dot(one: Direction, other: Direction): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

function cross(one: Direction, other: Direction): [number, number, number] {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}
