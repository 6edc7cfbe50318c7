import type { Mesh } from '../mesh.ts';
import { gridSolid } from './grid-solid.ts';

const AROUND = 36;
const LENGTH = 90;
const RINGS = 6;
const INNER = 14.5;
const OUTER = 17;
const FLANGE = 20;
const FLANGE_LENGTH = 4;
/** Turn of the struts from one end to the other, radians. */
const TWIST = Math.PI / 3;

/** An air duct with a lattice wall, 90 mm long and 40 mm wide, lying along x: rings, twisted struts, two flanges. */
export function duct(): Mesh {
  const steps = Array.from({ length: AROUND + 1 }, (_, step) => step);
  return gridSolid({
    isRing: true,
    lines: { x: steps, y: [INNER, OUTER, FLANGE], z: lengthLines() },
    isFilled: (step, radius, along) => {
      const isFlange = along < FLANGE_LENGTH || along >= LENGTH - FLANGE_LENGTH;
      if (isFlange) return true;
      if (radius >= OUTER) return false;
      const { ring, isStrutRow } = row(along);
      return !isStrutRow || (step + 2 * (ring % 2)) % 4 === 0;
    },
    place: (step, radius, along) => {
      // Angle, radius and length are left-handed along these axes; the angle therefore runs backwards.
      const angle = (TWIST * along) / LENGTH - (2 * Math.PI * step) / AROUND;
      return [along, radius * Math.cos(angle), radius * Math.sin(angle)];
    },
  });
}

/** Between the flanges: a row of struts, a ring, a row of struts and so on. */
function lengthLines(): number[] {
  const lines = [0, FLANGE_LENGTH];
  const pitch = (LENGTH - 2 * FLANGE_LENGTH) / RINGS;
  for (let ring = 0; ring < RINGS; ring++) {
    const start = FLANGE_LENGTH + ring * pitch;
    lines.push(start + 0.4 * pitch, start + 0.8 * pitch);
    if (ring + 1 < RINGS) lines.push(start + pitch);
  }
  lines.push(LENGTH - FLANGE_LENGTH, LENGTH);
  return lines;
}

function row(along: number): { readonly ring: number; readonly isStrutRow: boolean } {
  const pitch = (LENGTH - 2 * FLANGE_LENGTH) / RINGS;
  const place = (along - FLANGE_LENGTH) / pitch + 1e-9;
  const ring = Math.floor(place);
  return { ring, isStrutRow: place - ring < 0.79 };
}
