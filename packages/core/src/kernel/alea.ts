// The root of seedrandom pulls in node:crypto; the generator alone runs in a browser worker unchanged.
import alea from 'seedrandom/lib/alea.js';

const ONE_WORD = 2 ** -32;
/** A draw is k / 2^32 and may be exactly 0; half a step keeps inversion away from both ends. */
const HALF_STEP = 0.5 * ONE_WORD;
const MULTIPLIER = 2091639;

/**
 * The generator Alea of the package `seedrandom`, begun by that package and stepped here: the same numbers to the last
 * bit, which the test holds against it. The step (J. Baagøe 2010, MIT licence) is written out because a lab draws
 * everywhere: as a class whose state is in its fields it is inlined where it is drawn from, and a call is saved.
 */
export class Alea {
  // Begun with numbers: a field that begins undefined is no double to the compiler, and every draw would allocate.
  private first = 0;
  private second = 0;
  private third = 0;
  private carry = 1;

  constructor(seed: string) {
    const { s0, s1, s2, c } = alea(seed, { state: true }).state();
    this.first = s0;
    this.second = s1;
    this.third = s2;
    this.carry = c;
  }

  /** @returns the next number, strictly between 0 and 1: half a step of 2^-32 above what Alea gives */
  next(): number {
    const product = MULTIPLIER * this.first + this.carry * ONE_WORD;
    const carry = product | 0;
    const drawn = product - carry;
    this.first = this.second;
    this.second = this.third;
    this.third = drawn;
    this.carry = carry;
    return drawn + HALF_STEP;
  }
}
