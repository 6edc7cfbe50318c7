import type { Sampler } from './sampler.ts';
import type { Stream } from './streams.ts';

const FEWEST = 8;
const MOST = 64;

/**
 * The draws of one sampler from one stream that nobody else draws from, in the order of the stream. They are made
 * some at a time, the more the more are taken: one draw is a long chain of steps that wait for each other, and the
 * processor works on many of them at once when they stand side by side.
 */
export class Draws {
  private readonly sampler: Sampler;
  private readonly stream: Stream;
  private readonly hours = new Float64Array(MOST);
  private made = 0;
  private taken = 0;

  constructor(sampler: Sampler, stream: Stream) {
    this.sampler = sampler;
    this.stream = stream;
  }

  /** @returns the next duration in hours, not rounded */
  next(): number {
    if (this.taken === this.made) this.makeMore();
    return this.hours[this.taken++];
  }

  private makeMore(): void {
    const { hours, sampler, stream } = this;
    this.made = Math.min(MOST, Math.max(FEWEST, 2 * this.made));
    this.taken = 0;
    for (let draw = 0; draw < this.made; draw++) hours[draw] = sampler.sample(stream());
  }
}
