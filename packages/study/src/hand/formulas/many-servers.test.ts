import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fewestServers,
  meanSojourn,
  meanWait,
  shareSojourningLonger,
  shareWaitingLonger,
  sojournPercentile,
  waitPercentile,
} from './many-servers.ts';

describe('M/M/c', () => {
  it('has the waits of three servers of an example', () => {
    // Source: Gross and Harris, "Fundamentals of Queueing Theory", section 2.3, example (from memory): 8/9 waiting, 0.481 h.
    const queue = { arrivalRate: 6, meanServiceHours: 1 / 3, servers: 3 };
    expect(meanWait(queue)).toBeCloseTo(0.1481481481, 9);
    expect(meanSojourn(queue)).toBeCloseTo(0.4814814815, 9);
    expect(6 * meanWait(queue)).toBeCloseTo(0.8888888889, 9);
  });

  it('has percentiles of wait and of wait and service together', () => {
    // Source: Erlang C; with c µ − λ = µ the sojourn of those who wait is Erlang(2). Recomputed.
    const queue = { arrivalRate: 4, meanServiceHours: 1, servers: 5 };
    expect(meanWait(queue)).toBeCloseTo(0.5541125541, 9);
    expect(meanSojourn(queue)).toBeCloseTo(1.554112554, 9);
    expect(shareWaitingLonger(queue, 1)).toBeCloseTo(0.2038466168, 9);
    expect(waitPercentile(queue, 0.9)).toBeCloseTo(1.712197646, 8);
    expect(waitPercentile(queue, 0.95)).toBeCloseTo(2.405344827, 8);
    expect(sojournPercentile(queue, 0.95)).toBeCloseTo(4.197462578, 8);
  });

  it('with one server has an exponential sojourn', () => {
    // Source: M/M/1, Gross and Harris, chapter 2 (from memory): mean 5, percentiles 5 ln 2 and 5 ln 20.
    const queue = { arrivalRate: 0.8, meanServiceHours: 1, servers: 1 };
    expect(meanSojourn(queue)).toBeCloseTo(5, 12);
    expect(sojournPercentile(queue, 0.5)).toBeCloseTo(3.465735903, 9);
    expect(sojournPercentile(queue, 0.95)).toBeCloseTo(14.97866137, 8);
    expect(waitPercentile(queue, 0.95)).toBeCloseTo(13.86294361, 8);
  });

  it('gives the 95th percentile for four to eleven printers, and six as the fewest for 14 h', () => {
    // Source: Erlang C sojourn law; 0.9 builds an hour of 4 h on average. Recomputed.
    const expected = [
      32.66209927, 14.28984978, 12.50226191, 12.12404928, 12.02345373, 11.99448651, 11.98611325, 11.983766,
    ];
    const printers = { arrivalRate: 0.9, meanServiceHours: 4 };
    const found = expected.map((_, index) => sojournPercentile({ ...printers, servers: 4 + index }, 0.95));
    found.forEach((value, index) => {
      expect(value).toBeCloseTo(expected[index] ?? 0, 7);
    });
    expect(fewestServers(printers, 0.95, 14)).toBe(6);
    expect(fewestServers(printers, 0.95, 14.3)).toBe(5);
    // No number of printers prints 95 of 100 builds within 11.98 h: 4 ln 20 = 11.983.
    expect(fewestServers(printers, 0.95, 11.98)).toBeNull();
  });

  it('has percentiles that the share beyond them agrees with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.98, noNaN: true }),
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (utilization, servers, share) => {
          const queue = { arrivalRate: utilization * servers, meanServiceHours: 1, servers };
          expect(shareSojourningLonger(queue, sojournPercentile(queue, share))).toBeCloseTo(1 - share, 9);
        },
      ),
    );
  });

  it('is refused where the servers cannot keep up', () => {
    expect(() => meanWait({ arrivalRate: 2, meanServiceHours: 1, servers: 2 })).toThrow(RangeError);
  });
});
