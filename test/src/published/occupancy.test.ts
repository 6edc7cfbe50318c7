import { describe, expect, it } from 'vitest';
import { arrivalsOf, occupancyOf } from './occupancy.ts';

describe('The occupancy of a traced replication', () => {
  it('counts jobs in the lab by time, within the measured window alone', () => {
    const occupancy = occupancyOf({ windowStart: 10, windowEnd: 20 }, [
      { time: 2, what: 'job arrives' },
      { time: 11, what: 'job arrives' },
      { time: 12, what: 'step starts' },
      { time: 14, what: 'job ends' },
      { time: 18, what: 'job is cancelled' },
      { time: 25, what: 'job arrives' },
    ]);
    // One job from 10 to 11 and from 14 to 18, two from 11 to 14, none from 18 to 20.
    expect([...occupancy]).toEqual([0.2, 0.5, 0.3]);
  });

  it('goes with the arrivals in that window', () => {
    const hour = 3_600_000;
    const arrivals = arrivalsOf({ windowStart: 10 * hour, windowEnd: 20 * hour }, [
      { time: 9 * hour, what: 'job arrives' },
      { time: 10 * hour, what: 'job arrives' },
      { time: 12 * hour, what: 'job ends' },
      { time: 12.5 * hour, what: 'job arrives' },
      { time: 20 * hour, what: 'job arrives' },
    ]);
    expect([...arrivals]).toEqual([0, 2.5]);
  });
});
