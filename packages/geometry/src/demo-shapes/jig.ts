import type { Mesh } from '../mesh.ts';
import { gridSolid, sortedLines } from './grid-solid.ts';
import { holeLines, isInHole, type RoundHole, roundedAt } from './round-hole.ts';

const PLATE = 8;
const TOP = 25;
const PADS = [
  [20, 40],
  [100, 120],
] as const;
const PAD = { front: 12, middle: 30, back: 48 } as const;
const GROOVE_DEPTH = 11;
const HOLES: readonly RoundHole[] = [10, 70, 130].map((u) => ({ u, v: 30, radius: 4, outside: 7 }));

/** An assembly jig, 140 x 60 x 25 mm: a plate of 8 mm with three holes, and two pads with a groove for a shaft. */
export function jig(): Mesh {
  return gridSolid({
    lines: {
      x: sortedLines(0, ...PADS.flat(), ...HOLES.flatMap(({ u }) => holeLines(u, 4, 7)), 140),
      y: sortedLines(0, ...holeLines(30, 4, 7), PAD.front, PAD.back, 60),
      z: [0, PLATE, TOP],
    },
    isFilled: (x, y, z) => {
      if (z < PLATE) return !HOLES.some((hole) => isInHole(hole, x, y));
      return PADS.some(([from, to]) => x >= from && x < to) && y >= PAD.front && y < PAD.back;
    },
    place: (x, y, z) => {
      if (z <= PLATE) {
        for (const hole of HOLES) {
          const [movedX, movedY] = roundedAt(hole, x, y);
          if (movedX !== x || movedY !== y) return [movedX, movedY, z];
        }
        return [x, y, z];
      }
      const fromMiddle = Math.abs(y - PAD.middle);
      const reach = GROOVE_DEPTH + 1;
      return [x, y, fromMiddle >= reach ? z : z - (GROOVE_DEPTH * (reach - fromMiddle)) / reach];
    },
  });
}
