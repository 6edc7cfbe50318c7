/// <reference path="./seedrandom-alea.d.ts" />
import alea from 'seedrandom/lib/alea';

/** Draws strictly between 0 and 1 from a named seed. */
export function draws(seed: string): () => number {
  const generator = alea(seed);
  return () => (Math.floor(generator() * 2 ** 32) + 0.5) / 2 ** 32;
}

/** Whole numbers from low to high, both included. */
export function wholeNumber(draw: () => number, low: number, high: number): number {
  return low + Math.floor(draw() * (high - low + 1));
}
