import { inverseNormal } from '@buildweek/numbers';
import { draws } from './draws.ts';

/** Standard normal draws from a named seed. */
export function normalDraws(seed: string): () => number {
  const draw = draws(seed);
  return () => inverseNormal(draw());
}
