import { expect } from 'vitest';
import { agreementsOf } from './agreement.ts';
import { play } from './play.ts';
import type { PublishedCase } from './published-case.ts';

/** Milliseconds: a case takes seconds, more where other tests run beside it. */
export const PATIENCE = 240_000;

/**
 * Plays a case and expects that every value agrees with theory and is known sharply enough to tell, that nothing had
 * to be warned of, and that the laws held in every replication.
 */
export async function expectAgreement(published: PublishedCase): Promise<void> {
  const played = await play(published.scenario, published.traced);
  const agreements = agreementsOf(published, played);
  const words = (selected: typeof agreements): string[] => selected.map((one) => one.words);
  expect(words(agreements.filter((one) => !one.agrees))).toEqual([]);
  expect(words(agreements.filter((one) => !one.isSharp))).toEqual([]);
  expect(played.results.warnings).toEqual([]);
  expect(played.results.checks.filter((check) => !check.holds)).toEqual([]);
}
