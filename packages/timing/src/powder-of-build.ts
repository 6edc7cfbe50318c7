import type { PowderUse } from '@buildweek/model';
import { checkNotNegative, checkPositive, checkShare } from './checks.ts';

const CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE = 1000;

/** Grams of powder that go into a build and come out of it: virgin + used = returned + in parts. */
export interface PowderOfBuild {
  readonly virginGrams: number;
  /** Used powder that is taken from the store. */
  readonly usedGrams: number;
  /** Powder that comes out of the cake and goes back to the store. */
  readonly returnedGrams: number;
  readonly inPartsGrams: number;
}

/**
 * Powder of one build. The parts are denser than the bed, so the bed sinks while they are made and more is spread
 * than the cake would hold: what is put in is what lies around the parts and what they are made of. Loss in
 * sieving and blasting is not counted.
 * Source: balance of masses; elementary.
 * @param cakeVolume volume of the whole part cake with the parts in it, mm3
 * @param partVolume volume of the parts, mm3
 * @throws RangeError when the parts are larger than the cake, or a number is not possible
 */
export function powderOfBuild(use: PowderUse, cakeVolume: number, partVolume: number): PowderOfBuild {
  checkPositive('density of the powder bed', use.bedDensity);
  checkPositive('density of the parts', use.partDensity);
  checkShare('share of virgin powder', use.virginShare);
  checkNotNegative('volume of the part cake', cakeVolume);
  checkNotNegative('volume of the parts', partVolume);
  if (partVolume > cakeVolume) {
    throw new RangeError(`Parts of ${partVolume} mm3 are more than a part cake of ${cakeVolume} mm3.`);
  }
  const inPartsGrams = (partVolume * use.partDensity) / CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE;
  const returnedGrams = ((cakeVolume - partVolume) * use.bedDensity) / CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE;
  const filled = inPartsGrams + returnedGrams;
  const virginGrams = filled * use.virginShare;
  return { virginGrams, usedGrams: filled - virginGrams, returnedGrams, inPartsGrams };
}
