import type { Mesh } from '../mesh.ts';
import { gridSolid, sortedLines } from './grid-solid.ts';
import { holeLines, isInHole, type RoundHole, roundedAt } from './round-hole.ts';

const WIDTH = 120;
const DEPTH = 80;
const HEIGHT = 35;
const WALL = 2;
const CORNER = 8;
const BOSS = { radius: 4, hole: 1.5, height: 25, inset: 18 } as const;
const BOSS_X = [BOSS.inset, WIDTH - BOSS.inset];
const BOSS_Y = [BOSS.inset, DEPTH - BOSS.inset];
/** Starts of the cooling slots along y, 4 mm wide, and their reach in z. */
const SLOTS = [26, 34, 42, 50] as const;
const SLOT = { width: 4, from: 10, to: 25 } as const;
/** Opening for a cable in the other short wall. */
const CABLE = { from: 34, to: 46, low: 8, high: 16 } as const;

const BOSSES: readonly RoundHole[] = BOSS_X.flatMap((u) =>
  BOSS_Y.map((v) => ({ u, v, radius: BOSS.radius, outside: 7 })),
);
const BOSS_HOLES: readonly RoundHole[] = BOSSES.map((boss) => ({ ...boss, radius: BOSS.hole }));

/** A thin-walled housing, 120 x 80 x 35 mm, open above: walls of 2 mm, round corners, bosses, slots, an opening. */
export function housing(): Mesh {
  const bossLines = (middle: number): number[] => [
    ...holeLines(middle, BOSS.radius, 7),
    middle - BOSS.hole,
    middle + BOSS.hole,
  ];
  return gridSolid({
    lines: {
      x: sortedLines(...edgeLines(WIDTH), ...BOSS_X.flatMap(bossLines)),
      y: sortedLines(
        ...edgeLines(DEPTH),
        ...BOSS_Y.flatMap(bossLines),
        ...SLOTS.flatMap((start) => [start, start + SLOT.width]),
        CABLE.from,
        CABLE.to,
      ),
      z: sortedLines(0, WALL, CABLE.low, SLOT.from, CABLE.high, SLOT.to, BOSS.height, HEIGHT),
    },
    isFilled: (x, y, z) => {
      if (z < WALL) return true;
      if (isWall(x, WIDTH) || isWall(y, DEPTH)) return !isOpening(x, y, z);
      if (z >= BOSS.height) return false;
      return BOSSES.some((boss, index) => isInHole(boss, x, y) && !isInHole(BOSS_HOLES[index], x, y));
    },
    place: (x, y, z) => {
      for (const boss of BOSSES) {
        const [movedX, movedY] = roundedAt(boss, x, y);
        if (movedX !== x || movedY !== y) return [movedX, movedY, z];
      }
      return [...rounded(x, y), z];
    },
  });
}

/** Lines near both ends of a side: the wall, and steps of the round corner. */
function edgeLines(side: number): number[] {
  const offsets = [0, WALL, 0.6 * CORNER, CORNER];
  return offsets.flatMap((offset) => [offset, side - offset]);
}

function isWall(start: number, side: number): boolean {
  return start < WALL || start >= side - WALL;
}

function isOpening(x: number, y: number, z: number): boolean {
  if (x < WALL) {
    return z >= SLOT.from && z < SLOT.to && SLOTS.some((start) => y >= start && y < start + SLOT.width);
  }
  return x >= WIDTH - WALL && z >= CABLE.low && z < CABLE.high && y >= CABLE.from && y < CABLE.to;
}

/** Squares around the middle of a corner become quarter circles, so the wall keeps its thickness. */
function rounded(x: number, y: number): [number, number] {
  const middleX = Math.min(Math.max(x, CORNER), WIDTH - CORNER);
  const middleY = Math.min(Math.max(y, CORNER), DEPTH - CORNER);
  const halfSide = Math.max(Math.abs(x - middleX), Math.abs(y - middleY));
  if (halfSide === 0) return [x, y];
  const factor = halfSide / Math.hypot(x - middleX, y - middleY);
  return [middleX + (x - middleX) * factor, middleY + (y - middleY) * factor];
}
