import { describe, expect, it } from 'vitest';
import { Draws } from './draws.ts';
import { createSampler } from './sampler.ts';
import { createStream } from './streams.ts';

describe('Draws', () => {
  it('gives what its sampler makes of its stream, one after the other', () => {
    const sampler = createSampler({ kind: 'exponential', mean: 3 });
    const draws = new Draws(sampler, createStream('spring', 0, 'work', 'sand'));
    const stream = createStream('spring', 0, 'work', 'sand');
    for (let draw = 0; draw < 1000; draw++) expect(draws.next()).toBe(sampler.sample(stream()));
  });

  it('takes few numbers ahead as long as few are asked for', () => {
    let taken = 0;
    const draws = new Draws(createSampler({ kind: 'uniform', low: 0, high: 1 }), () => {
      taken++;
      return 0.5;
    });
    for (let draw = 1; draw <= 100; draw++) {
      draws.next();
      expect(taken).toBeLessThanOrEqual(Math.max(8, 3 * draw));
    }
  });
});
