import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanWait } from './many-servers.ts';
import { allenCunneenWait, sakasegawaWait } from './parallel-servers.ts';
import { kingmanWait } from './single-server.ts';

const pair = { utilization: 0.8, meanServiceHours: 1, servers: 2, arrivalVariability: 1 };

describe('parallel servers', () => {
  // Sources: Allen 1990, Sakasegawa 1977; recomputed. M/M/2 waits 1.7778 h, M/D/2 0.9033 h exactly.
  it('wait by Allen and Cunneen', () => {
    expect(allenCunneenWait({ ...pair, serviceVariability: 0 })).toBeCloseTo(0.8888888889, 9);
    expect(allenCunneenWait({ ...pair, serviceVariability: 1 })).toBeCloseTo(1.777777778, 9);
  });

  it('wait by Sakasegawa', () => {
    expect(sakasegawaWait({ ...pair, serviceVariability: 0 })).toBeCloseTo(0.9045653404, 9);
    expect(sakasegawaWait({ ...pair, serviceVariability: 1 })).toBeCloseTo(1.809130681, 9);
  });

  it('wait by the VUT equation of parallel machines', () => {
    // Source: Hopp and Spearman, "Factory Physics", section 8.6.4; recomputed.
    const queue = { utilization: 0.85, meanServiceHours: 6, servers: 4 };
    const wait = sakasegawaWait({ ...queue, arrivalVariability: 1, serviceVariability: 0.6 });
    expect(wait).toBeCloseTo(5.629555523, 9);
    expect(wait + queue.meanServiceHours).toBeCloseTo(11.62955552, 8);
  });

  it('wait as by Kingman when there is one server', () => {
    const queue = { utilization: 0.7, meanServiceHours: 3, arrivalVariability: 2, serviceVariability: 0.4 };
    expect(sakasegawaWait({ ...queue, servers: 1 })).toBeCloseTo(kingmanWait(queue), 12);
  });

  it('by Sakasegawa take within 3 % as long, wait and service together, as by Erlang C', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (utilization, servers) => {
          const queue = { utilization, meanServiceHours: 1, servers };
          const approximate = sakasegawaWait({ ...queue, arrivalVariability: 1, serviceVariability: 1 });
          const exact = meanWait({ arrivalRate: utilization * servers, meanServiceHours: 1, servers });
          expect(Math.abs((approximate + 1) / (exact + 1) - 1)).toBeLessThan(0.03);
        },
      ),
    );
  });

  it('wait without end at full load', () => {
    expect(sakasegawaWait({ ...pair, utilization: 1, serviceVariability: 1 })).toBe(Number.POSITIVE_INFINITY);
  });
});
