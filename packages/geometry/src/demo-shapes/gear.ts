import type { Mesh } from '../mesh.ts';
import { gridSolid } from './grid-solid.ts';

const TEETH = 18;
/** Radii of bore, hub, rim, root circle, pitch circle and tip circle, mm: module 1.5 mm. */
const BORE = 3;
const HUB = 6;
const RIM = 9.5;
const ROOT = 11.625;
const PITCH = 13.5;
const TIP = 15;
/** Half the thickness of a tooth as a share of the pitch, at the root, pitch and tip circle. */
const HALF_TOOTH = new Map([
  [ROOT, 0.36],
  [PITCH, 0.25],
  [TIP, 0.12],
]);
/** Lines of the grid from the middle of a tooth, as shares of the pitch; teeth reach to a quarter on both sides. */
const PARTS = [-0.5, -0.25, 0, 0.25];
const STEPS_PER_TOOTH = PARTS.length;

/** A small spur gear, 30 mm across and 10 mm thick: eighteen straight-sided teeth, and a web of 4 mm. */
export function gear(): Mesh {
  return gridSolid({
    isRing: true,
    lines: {
      x: Array.from({ length: TEETH * STEPS_PER_TOOTH + 1 }, (_, step) => step),
      y: [BORE, HUB, RIM, ROOT, PITCH, TIP],
      z: [0, 3, 7, 10],
    },
    isFilled: (step, radius, z) => {
      if (radius >= ROOT) {
        const part = PARTS[step % STEPS_PER_TOOTH];
        return part === -0.25 || part === 0;
      }
      const isWeb = radius >= HUB && radius < RIM;
      return !isWeb || (z >= 3 && z < 7);
    },
    place: (step, radius, z) => {
      const tooth = Math.floor(step / STEPS_PER_TOOTH);
      const half = HALF_TOOTH.get(radius) ?? 0.25;
      const part = PARTS[step % STEPS_PER_TOOTH];
      const share = Math.abs(part) === 0.25 ? Math.sign(part) * half : part;
      // The grid is left-handed as radius, angle, z; the angle therefore runs backwards.
      const angle = (-2 * Math.PI * (tooth + share)) / TEETH;
      return [radius * Math.cos(angle), radius * Math.sin(angle), z];
    },
  });
}
