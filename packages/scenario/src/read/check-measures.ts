import type { Fields } from '../fields.ts';
import type { ScenarioShape } from '../scenario.ts';
import { areaText, volumeText } from '../words/measure.ts';

type SizedShape = Extract<ScenarioShape, { kind: 'size' }>;

/** Less of its box is hardly ever part, even where walls are thin. Common practice, no source. */
const LEAST_SHARE = 0.005;

/** Leaves room for rounding. */
const TOLERANCE = 1e-9;

/**
 * Finds measures that no part can have together, as they come of a slip in a unit or a digit.
 *
 * @returns whether they are possible
 */
export function checkMeasures(part: Fields, shape: SizedShape): boolean {
  const { size, volume, surface, supportedVolume, supportContact } = shape;
  const box = size.width * size.depth * size.height;
  const report = (key: string, message: string, expected: string, example: string): false => {
    part.report(key, 'value', message, expected, `for example: ${example}`);
    return false;
  };
  if (volume > box * (1 + TOLERANCE)) {
    const message = `A volume of ${volumeText(volume)} is more than the box of ${volumeText(box)} around the part.`;
    return report('volume', message, `at most ${volumeText(box)}`, volumeText(box / 2));
  }
  if (volume < box * LEAST_SHARE) warnOfLittle(part, volume, box);
  const least = surfaceOfBall(volume);
  if (surface !== null && surface < least * (1 - TOLERANCE)) {
    const message = `A surface of ${areaText(surface)} is less than that of a ball of ${volumeText(volume)}.`;
    return report('surface', message, `at least ${areaText(least)}`, areaText(2 * least));
  }
  if (supportContact !== null && surface !== null && supportContact > surface * (1 + TOLERANCE)) {
    const message = `A support contact of ${areaText(supportContact)} is more than the surface of ${areaText(surface)}.`;
    return report('support contact', message, `at most ${areaText(surface)}`, areaText(surface / 20));
  }
  const free = box - volume;
  if (supportedVolume !== null && supportedVolume > free + box * TOLERANCE) {
    const message = `Supports have room in what the part leaves of its box, and that is ${volumeText(free)}.`;
    return report('supported volume', message, `at most ${volumeText(free)}`, volumeText(free / 4));
  }
  return true;
}

function warnOfLittle(part: Fields, volume: number, box: number): void {
  part.reading.report(part.pathOf('volume'), 'value', {
    severity: 'warning',
    message: `Of its box of ${volumeText(box)} the part takes only ${volumeText(volume)}.`,
    found: volumeText(volume),
    expected: 'a volume in the right unit, beside a size in the right one',
    write: volumeText(box / 4),
  });
}

/** The least surface that a body of this volume can have: that of a ball (isoperimetric inequality). */
function surfaceOfBall(volume: number): number {
  return Math.cbrt(36 * Math.PI * volume * volume);
}
