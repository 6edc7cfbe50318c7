import type { Mesh } from '../mesh.ts';
import { VertexTable } from '../vertex-table.ts';

export type Point = readonly [number, number, number];
type Face = readonly [Point, Point, Point];

/** A mesh of triangles whose equal corners are joined. */
function meshOf(faces: readonly Face[]): Mesh {
  const table = new VertexTable();
  const triangles = faces.flatMap((face) => face.map((corner) => table.add(...corner)));
  return { positions: table.positions(), triangles: Uint32Array.from(triangles) };
}

/** A box with outward triangles; corners are numbered with x running fastest. */
export function box(width: number, depth: number, height: number, at: Point = [0, 0, 0]): Mesh {
  const positions = Float64Array.from(
    [0, 1, 2, 3, 4, 5, 6, 7].flatMap((corner) => [
      at[0] + (corner & 1 ? width : 0),
      at[1] + (corner & 2 ? depth : 0),
      at[2] + (corner & 4 ? height : 0),
    ]),
  );
  const triangles = Uint32Array.from(
    [
      [0, 2, 1],
      [1, 2, 3],
      [4, 5, 6],
      [5, 7, 6],
      [0, 1, 4],
      [1, 5, 4],
      [2, 6, 3],
      [3, 6, 7],
      [0, 4, 2],
      [2, 4, 6],
      [1, 3, 5],
      [3, 7, 5],
    ].flat(),
  );
  return { positions, triangles };
}

/** Several meshes as one, without joining vertices. */
export function together(...meshes: readonly Mesh[]): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const first = positions.length / 3;
    for (const vertex of mesh.triangles) triangles.push(first + vertex);
    positions.push(...mesh.positions);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** The mesh with every vertex moved. */
export function moved(mesh: Mesh, move: (point: Point) => Point): Mesh {
  const positions = new Float64Array(mesh.positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    positions.set(move([mesh.positions[at], mesh.positions[at + 1], mesh.positions[at + 2]]), at);
  }
  return { positions, triangles: mesh.triangles };
}

/** The mesh without some of its triangles. */
export function without(mesh: Mesh, ...omitted: readonly number[]): Mesh {
  const triangles = mesh.triangles.filter((_, corner) => !omitted.includes(Math.floor(corner / 3)));
  return { positions: mesh.positions, triangles };
}

/** The mesh with some of its triangles turned over. */
export function flipped(mesh: Mesh, ...turned: readonly number[]): Mesh {
  const triangles = mesh.triangles.slice();
  for (const triangle of turned) {
    triangles[3 * triangle] = mesh.triangles[3 * triangle + 1];
    triangles[3 * triangle + 1] = mesh.triangles[3 * triangle];
  }
  return { positions: mesh.positions, triangles };
}

/** The mesh with further triangles between its vertices. */
export function extended(mesh: Mesh, ...corners: readonly number[]): Mesh {
  return { positions: mesh.positions, triangles: Uint32Array.from([...mesh.triangles, ...corners]) };
}

/** All triangles turned over. */
export function reversed(mesh: Mesh): Mesh {
  return flipped(mesh, ...Array.from({ length: mesh.triangles.length / 3 }, (_, triangle) => triangle));
}

/** Turned about the z axis, radians. */
export function turnedAboutZ(mesh: Mesh, angle: number): Mesh {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return moved(mesh, ([x, y, z]) => [x * cosine - y * sine, x * sine + y * cosine, z]);
}

/** A convex solid around the origin from the corners of its faces, which may run either way. */
export function convex(corners: readonly Point[], faces: readonly (readonly number[])[]): Mesh {
  return meshOf(
    faces.flatMap((face) => {
      const ring = face.map((corner) => corners[corner]);
      const [a, b, c] = ring;
      const normal = cross(minus(b, a), minus(c, a));
      const outward =
        normal[0] * a[0] + normal[1] * a[1] + normal[2] * a[2] > 0 ? ring : ring.slice().reverse();
      return fan(outward);
    }),
  );
}

export function octahedron(): Mesh {
  const corners: Point[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ];
  const faces = [0, 1].flatMap((x) => [2, 3].flatMap((y) => [4, 5].map((z) => [x, y, z])));
  return convex(corners, faces);
}

/** Of circumradius 1. */
export function icosahedron(): Mesh {
  const golden = (1 + Math.sqrt(5)) / 2;
  const radius = Math.hypot(1, golden);
  const corners: Point[] = [];
  for (const one of [-1, 1]) {
    for (const long of [-golden, golden]) {
      corners.push([0, one / radius, long / radius]);
      corners.push([one / radius, long / radius, 0]);
      corners.push([long / radius, 0, one / radius]);
    }
  }
  const edge = 2 / radius;
  const isEdge = (a: number, b: number): boolean =>
    Math.abs(Math.hypot(...minus(corners[a], corners[b])) - edge) < 1e-9;
  const faces: number[][] = [];
  for (let a = 0; a < 12; a++) {
    for (let b = a + 1; b < 12; b++) {
      for (let c = b + 1; c < 12; c++)
        if (isEdge(a, b) && isEdge(b, c) && isEdge(a, c)) faces.push([a, b, c]);
    }
  }
  return convex(corners, faces);
}

/** Cube of circumradius 1. */
export function roundCube(): Mesh {
  const half = 1 / Math.sqrt(3);
  return moved(box(2 * half, 2 * half, 2 * half), ([x, y, z]) => [x - half, y - half, z - half]);
}

/** Regular tetrahedron of circumradius 1. */
export function regularTetrahedron(): Mesh {
  const side = 1 / Math.sqrt(3);
  return convex(
    [
      [side, side, side],
      [side, -side, -side],
      [-side, side, -side],
      [-side, -side, side],
    ],
    [
      [0, 1, 2],
      [0, 1, 3],
      [0, 2, 3],
      [1, 2, 3],
    ],
  );
}

/** The icosahedron with edge midpoints pushed to the unit sphere, again and again. */
export function icosphere(levels: number): Mesh {
  let mesh = icosahedron();
  for (let level = 0; level < levels; level++) {
    const faces: Face[] = [];
    for (let corner = 0; corner < mesh.triangles.length; corner += 3) {
      const [a, b, c] = [0, 1, 2].map((step) => vertexOf(mesh, mesh.triangles[corner + step]));
      const [ab, bc, ca] = [onSphere(a, b), onSphere(b, c), onSphere(c, a)];
      faces.push([a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]);
    }
    mesh = meshOf(faces);
  }
  return mesh;
}

/** A sphere of radius 1 along circles of latitude and longitude. */
export function globe(stacks: number, slices: number): Mesh {
  const at = (stack: number, slice: number): Point => {
    if (stack === 0) return [0, 0, 1];
    if (stack === stacks) return [0, 0, -1];
    const polar = (Math.PI * stack) / stacks;
    const around = (2 * Math.PI * (slice % slices)) / slices;
    return [Math.sin(polar) * Math.cos(around), Math.sin(polar) * Math.sin(around), Math.cos(polar)];
  };
  const faces: Face[] = [];
  for (let stack = 0; stack < stacks; stack++) {
    for (let slice = 0; slice < slices; slice++) {
      const [a, b] = [at(stack, slice), at(stack + 1, slice)];
      const [c, d] = [at(stack + 1, slice + 1), at(stack, slice + 1)];
      if (stack + 1 < stacks) faces.push([a, b, c]);
      if (stack > 0) faces.push([a, c, d]);
    }
  }
  return meshOf(faces);
}

/** A polygon, counter-clockwise, drawn up from z = 0; triangles are fans from the first corner, so it is star-shaped. */
export function extruded(polygon: readonly (readonly [number, number])[], height: number): Mesh {
  const low = polygon.map(([x, y]): Point => [x, y, 0]);
  const high = polygon.map(([x, y]): Point => [x, y, height]);
  const sides = low.flatMap((_, index): Face[] => {
    const next = (index + 1) % low.length;
    return [
      [low[index], low[next], high[next]],
      [low[index], high[next], high[index]],
    ];
  });
  return meshOf([...fan([low[0], ...low.slice(1).reverse()]), ...fan(high), ...sides]);
}

export function regularPolygon(corners: number, radius: number): [number, number][] {
  return Array.from({ length: corners }, (_, corner): [number, number] => {
    const angle = (2 * Math.PI * corner) / corners;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** A cone over a regular polygon, tip up. */
export function cone(corners: number, radius: number, height: number): Mesh {
  const ring = regularPolygon(corners, radius).map(([x, y]): Point => [x, y, 0]);
  const sides = ring.map((point, index): Face => [point, ring[(index + 1) % corners], [0, 0, height]]);
  return meshOf([...fan(ring.slice().reverse()), ...sides]);
}

/** A ring of so many steps around and across its tube. */
export function torus(radius: number, tube: number, around: number, across: number): Mesh {
  const positions = new Float64Array(3 * around * across);
  const triangles = new Uint32Array(6 * around * across);
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < across; j++) {
      const along = (2 * Math.PI * i) / around;
      const turn = (2 * Math.PI * j) / across;
      const distance = radius + tube * Math.cos(turn);
      const vertex = i * across + j;
      positions.set(
        [distance * Math.cos(along), distance * Math.sin(along), tube * Math.sin(turn)],
        3 * vertex,
      );
      const nextI = ((i + 1) % around) * across;
      const nextJ = (j + 1) % across;
      const [a, b, c, d] = [vertex, nextI + j, nextI + nextJ, i * across + nextJ];
      triangles.set([a, b, c, a, c, d], 6 * vertex);
    }
  }
  return { positions, triangles };
}

function vertexOf(mesh: Mesh, vertex: number): Point {
  return [mesh.positions[3 * vertex], mesh.positions[3 * vertex + 1], mesh.positions[3 * vertex + 2]];
}

function fan(ring: readonly Point[]): Face[] {
  return ring.slice(2).map((point, index): Face => [ring[0], ring[index + 1], point]);
}

function onSphere(one: Point, other: Point): Point {
  const length = Math.hypot(one[0] + other[0], one[1] + other[1], one[2] + other[2]);
  return [(one[0] + other[0]) / length, (one[1] + other[1]) / length, (one[2] + other[2]) / length];
}

function minus(one: Point, other: Point): Point {
  return [one[0] - other[0], one[1] - other[1], one[2] - other[2]];
}

function cross(one: Point, other: Point): Point {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}
