import { describe, expect, it } from 'vitest';
import { PATIENCE } from './expect-agreement.ts';
import { meanLeadTime } from './measures.ts';
import { play } from './play.ts';

/** The largest share of tests in which a right procedure is refused, both sides together. */
const REFUSED = 0.001;

/** How many of n intervals of level 95 % have to cover the truth: two-sided 99.9 % limits of a binomial number. */
function acceptedCovers(intervals: number): [number, number] {
  let logChance = intervals * Math.log(0.05);
  let below = 0;
  let low = -1;
  let high = 0;
  for (let covers = 0; covers <= intervals; covers++) {
    below += Math.exp(logChance);
    if (low < 0 && below > REFUSED / 2) low = covers;
    if (1 - below > REFUSED / 2) high = covers + 1;
    logChance += Math.log(((intervals - covers) / (covers + 1)) * (0.95 / 0.05));
  }
  return [low, high];
}

describe('Coverage of intervals', () => {
  it('is tested with the published limits (T01, binomial, recomputed)', () => {
    expect(acceptedCovers(200)).toEqual([179, 198]);
    expect(acceptedCovers(500)).toEqual([458, 489]);
    expect(acceptedCovers(1000)).toEqual([926, 971]);
    expect(acceptedCovers(2000)).toEqual([1867, 1931]);
  });

  it(
    'of the mean wait for a daily shift (case Q33) lies within them, over two hundred runs',
    async () => {
      const truth = 16 / 3;
      let covers = 0;
      for (let run = 0; run < 200; run++) {
        const { low, high } = meanLeadTime(
          await play(`
buildweek: 1
name: a daily shift
simulate: { weeks: 1, ignored weeks: 0, replications: 30, seed: coverage ${run} }
people:
  technician: { hours: { daily: 08:00-16:00 }, skills: hand over }
routes:
  visit: [hand over: { by: hand over, takes: 0 min }]
parts:
  part: { route: visit }
demand:
  part: { jobs: 40 per week, when: any time }
`),
        );
        if (low <= truth && truth <= high) covers++;
      }
      const [fewest, most] = acceptedCovers(200);
      expect(covers).toBeGreaterThanOrEqual(fewest);
      expect(covers).toBeLessThanOrEqual(most);
    },
    PATIENCE,
  );
});
