import type { Stage } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { attended, bench, part } from '../fixture/lab.ts';
import { expectedVisits } from './expected-visits.ts';

function route(...rejects: readonly (readonly [share: number, backTo: string] | null)[]): Stage[] {
  return rejects.map((entry, index) => {
    const stage = bench(`stage ${index}`, attended('all', 1));
    return entry === null ? stage : { ...stage, rejects: { share: entry[0], backTo: entry[1] } };
  });
}

describe('expectedVisits', () => {
  it('is one visit at each stage where nothing is rejected', () => {
    expect(expectedVisits(part('lever', route(null, null, null)))).toEqual([1, 1, 1]);
  });

  it('is a geometric number of rounds from where the pieces are sent back to', () => {
    // One in five goes back to stage 1: 1 / 0.8 rounds of stages 1 and 2, and one of stage 0.
    const visits = expectedVisits(part('lever', route(null, null, [0.2, 'stage 1'])));
    expect(visits.map((value) => Number(value.toFixed(9)))).toEqual([1, 1.25, 1.25]);
  });

  it('multiplies rounds within rounds', () => {
    // Stage 1 repeats itself (1 / 0.5), within rounds of stages 0 to 2 (1 / 0.8).
    const visits = expectedVisits(part('lever', route(null, [0.5, 'stage 1'], [0.2, 'stage 0'])));
    expect(visits.map((value) => Number(value.toFixed(9)))).toEqual([1.25, 2.5, 1.25]);
  });

  it('solves rounds that overlap', () => {
    // From stage 2 half goes back to 0, from stage 3 half to 1. Flow by hand: v3 = 2; v2 = (1 + 1) / 0.5 = 4;
    // v1 = 1 + 0.5 × 4 + 0.5 × 2 = 4; v0 = 1 + 0.5 × 4 = 3.
    const visits = expectedVisits(part('lever', route(null, null, [0.5, 'stage 0'], [0.5, 'stage 1'])));
    expect(visits).toEqual([3, 4, 4, 2]);
  });
});
