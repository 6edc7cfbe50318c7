import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kingmanBound, kingmanWait, kraemerLangenbachBelzWait } from './single-server.ts';

const busy = { utilization: 0.8, meanServiceHours: 1 };
const even = { ...busy, arrivalVariability: 0.5, serviceVariability: 0.25 };
const erlangArrivals = { ...busy, arrivalVariability: 0.5, serviceVariability: 1 };
const timetable = { ...busy, arrivalVariability: 0, serviceVariability: 1 };

describe('one server', () => {
  // Sources: Kingman 1961 and 1962; Kraemer and Langenbach-Belz 1976; recomputed.
  it('waits by Kingman', () => {
    expect(kingmanWait(even)).toBeCloseTo(1.5, 12);
    expect(kingmanWait(erlangArrivals)).toBeCloseTo(3, 12);
    expect(kingmanWait(timetable)).toBeCloseTo(2, 12);
    // M/D/1 exactly (Erlang 1909).
    expect(kingmanWait({ ...busy, arrivalVariability: 1, serviceVariability: 0 })).toBeCloseTo(2, 12);
  });

  it('waits by Kraemer and Langenbach-Belz', () => {
    expect(kraemerLangenbachBelzWait(even)).toBeCloseTo(1.418939203, 9);
    expect(kraemerLangenbachBelzWait(erlangArrivals)).toBeCloseTo(2.917813431, 9);
    expect(kraemerLangenbachBelzWait(timetable)).toBeCloseTo(1.69296345, 8);
    expect(kraemerLangenbachBelzWait({ ...busy, arrivalVariability: 0, serviceVariability: 0 })).toBe(0);
  });

  it('waits no longer than the bound of Kingman', () => {
    expect(kingmanBound(erlangArrivals)).toBeCloseTo(3.5625, 12);
    const variability = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.99, noNaN: true }), variability, variability, (u, ca, cs) => {
        const queue = {
          utilization: u,
          meanServiceHours: 2,
          arrivalVariability: ca,
          serviceVariability: cs,
        };
        expect(kraemerLangenbachBelzWait(queue)).toBeLessThanOrEqual(kingmanBound(queue) * (1 + 1e-12));
      }),
    );
  });
});
