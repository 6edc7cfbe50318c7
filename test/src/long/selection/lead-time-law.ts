import type { Tandem } from './erlang-tandem.ts';
import { TaggedJob } from './tagged-job.ts';

/**
 * The law of lead times in two stations of several servers in a row, where both stations serve the job first that came
 * to the lab first (rule 3: of jobs without promises the earlier arrival).
 *
 * The times at the two stations are not independent then: where the first has several servers, a job that was overtaken
 * there goes ahead again at the second. (With the queue of the second in order of its own arrivals they would be
 * independent: P. J. Burke, "The output process of a stationary M/M/s queueing system", Annals of Mathematical
 * Statistics 39 (1968), 1144–1152. The means are the same.) So one job is followed through all states that matter to it,
 * as a Markov chain that starts as an arrival finds the stations in the long run, each on its own, and is looked at at
 * the jumps of a Poisson process of a rate that no state exceeds (uniformization: A. Jensen, "Markoff chains as an aid
 * in the study of Markoff processes", Skandinavisk Aktuarietidskrift 36 (1953), 87–91).
 */
export class LeadTimeLaw {
  /** Jumps an hour. */
  private readonly rate: number;
  /** Chance that the job is still there after so many jumps. */
  private readonly still: readonly number[];

  /** @param longest hours up to which the law is wanted */
  constructor(tandem: Tandem, longest: number) {
    const { arrivalRate, service, servers } = tandem;
    this.rate = arrivalRate + servers[0] / service[0] + servers[1] / service[1];
    const expected = this.rate * longest;
    const job = new TaggedJob(tandem, this.rate);
    this.still = Array.from({ length: Math.ceil(expected + 8 * Math.sqrt(expected) + 20) }, () => {
      const chance = job.isThere();
      job.jump();
      return chance;
    });
  }

  /** Share of jobs that take longer than so many hours. */
  shareBeyond(hours: number): number {
    const expected = this.rate * hours;
    let chance = Math.exp(-expected);
    let total = 0;
    this.still.forEach((still, jumps) => {
      if (jumps > 0) chance *= expected / jumps;
      total += chance * still;
    });
    return total;
  }
}
