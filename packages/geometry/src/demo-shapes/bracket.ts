import type { Mesh } from '../mesh.ts';
import { gridSolid, sortedLines } from './grid-solid.ts';
import { holeLines, isInHole, type RoundHole, roundedAt } from './round-hole.ts';

const PLATE = 5;
const RIB = { from: 18, to: 22, end: 50 } as const;
const RADIUS = 3.2;
const OUTSIDE = 6;
/** Holes in the base plate (x, y) and in the upright plate (y, z). */
const BASE_HOLES: readonly RoundHole[] = [10, 30].map((v) => ({
  u: 42,
  v,
  radius: RADIUS,
  outside: OUTSIDE,
}));
const UPRIGHT_HOLES: readonly RoundHole[] = [9, 31].map((u) => ({
  u,
  v: 19,
  radius: RADIUS,
  outside: OUTSIDE,
}));

/**
 * An angle bracket, 60 x 40 x 30 mm: two plates of 5 mm with two holes each, and a sloping rib between them. It is
 * drawn as it hangs on a wall, which is not how one would build it.
 */
export function bracket(): Mesh {
  const { positions, triangles } = lyingBracket();
  const hanging = positions.map((_, at) => {
    const vertex = at - (at % 3);
    return [positions[vertex], -positions[vertex + 2], positions[vertex + 1]][at % 3] + 0;
  });
  return { positions: hanging, triangles };
}

function lyingBracket(): Mesh {
  return gridSolid({
    lines: {
      x: sortedLines(0, PLATE, ...holeLines(42, RADIUS, OUTSIDE), RIB.end, 60),
      y: sortedLines(
        0,
        ...[...BASE_HOLES.map(({ v }) => v), ...UPRIGHT_HOLES.map(({ u }) => u)].flatMap((middle) =>
          holeLines(middle, RADIUS, OUTSIDE),
        ),
        RIB.from,
        RIB.to,
        40,
      ),
      z: sortedLines(0, PLATE, ...holeLines(19, RADIUS, OUTSIDE), 30),
    },
    isFilled: (x, y, z) => {
      if (z < PLATE) return !BASE_HOLES.some((hole) => isInHole(hole, x, y));
      if (x < PLATE) return !UPRIGHT_HOLES.some((hole) => isInHole(hole, y, z));
      return y >= RIB.from && y < RIB.to && x < RIB.end;
    },
    place: (x, y, z) => {
      if (x <= PLATE && z > PLATE) {
        for (const hole of UPRIGHT_HOLES) {
          const [movedY, movedZ] = roundedAt(hole, y, z);
          if (movedY !== y || movedZ !== z) return [x, movedY, movedZ];
        }
      }
      if (z <= PLATE) {
        for (const hole of BASE_HOLES) {
          const [movedX, movedY] = roundedAt(hole, x, y);
          if (movedX !== x || movedY !== y) return [movedX, movedY, z];
        }
        return [x, y, z];
      }
      // Above the plate and off the upright there is only the rib: it slopes down to a tenth of its height.
      const slope = x <= PLATE ? 1 : 1 - (0.9 * (x - PLATE)) / (RIB.end - PLATE);
      return [x, y, PLATE + (z - PLATE) * slope];
    },
  });
}
