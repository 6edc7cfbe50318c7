import { describe, expect, it } from 'vitest';
import {
  bestCase,
  bottleneckRate,
  criticalWorkInProgress,
  hoursInLine,
  jobsForShareOfRate,
  practicalWorstCase,
  rawProcessHours,
  worstCase,
} from './flow-line.ts';

/** Source: Hopp and Spearman, "Factory Physics", chapter 7: four single stations of 2 h. */
const single = [1, 1, 1, 1].map((machines) => ({ machines, processHours: 2 }));
/** The same, with parallel machines. */
const parallel = [
  { machines: 1, processHours: 2 },
  { machines: 2, processHours: 5 },
  { machines: 6, processHours: 10 },
  { machines: 2, processHours: 3 },
];

describe('a line of single stations', () => {
  it('has a bottleneck rate, a raw process time and a critical work in progress', () => {
    expect(bottleneckRate(single)).toBe(0.5);
    expect(rawProcessHours(single)).toBe(8);
    expect(criticalWorkInProgress(single)).toBe(4);
  });

  it.each([
    [4, 8, 0.5, 32, 14, 0.2857142857],
    [10, 20, 0.5, 80, 26, 0.3846153846],
  ])(
    'with %s jobs lies between the best and the worst case',
    (jobs, best, rate, worst, practical, slower) => {
      expect(bestCase(single, jobs).cycleHours).toBeCloseTo(best, 12);
      expect(bestCase(single, jobs).throughput).toBeCloseTo(rate, 12);
      expect(worstCase(single, jobs).cycleHours).toBeCloseTo(worst, 12);
      expect(worstCase(single, jobs).throughput).toBeCloseTo(0.125, 12);
      expect(practicalWorstCase(single, jobs).cycleHours).toBeCloseTo(practical, 12);
      expect(practicalWorstCase(single, jobs).throughput).toBeCloseTo(slower, 9);
    },
  );

  it('needs 57 jobs for 95 % of the bottleneck rate; 27, often given for it, are the number for 90 %', () => {
    expect(jobsForShareOfRate(single, 0.95)).toBe(57);
    expect(jobsForShareOfRate(single, 0.9)).toBe(27);
    expect(practicalWorstCase(single, 57).throughput).toBeCloseTo(0.95 * 0.5, 12);
    expect(practicalWorstCase(single, 27).throughput).toBeCloseTo(0.9 * 0.5, 12);
    expect(practicalWorstCase(single, 56).throughput).toBeLessThan(0.95 * 0.5);
  });
});

describe('a line of parallel machines', () => {
  it('has the rate of its slowest station', () => {
    expect(bottleneckRate(parallel)).toBe(0.4);
    expect(rawProcessHours(parallel)).toBe(20);
    expect(criticalWorkInProgress(parallel)).toBe(8);
  });

  it('lies between the best and the worst case', () => {
    expect(bestCase(parallel, 8)).toEqual({ throughput: 0.4, cycleHours: 20 });
    expect(worstCase(parallel, 8).cycleHours).toBeCloseTo(160, 12);
    expect(worstCase(parallel, 8).throughput).toBeCloseTo(0.05, 12);
    expect(practicalWorstCase(parallel, 8).cycleHours).toBeCloseTo(37.5, 12);
    expect(practicalWorstCase(parallel, 8).throughput).toBeCloseTo(0.2133333333, 9);
    expect(practicalWorstCase(parallel, 15).cycleHours).toBeCloseTo(55, 12);
    expect(practicalWorstCase(parallel, 15).throughput).toBeCloseTo(0.2727272727, 9);
  });
});

describe("Little's law", () => {
  it('gives the hours in a line from jobs and rate', () => {
    // Source: the example of M/M/3 in Gross and Harris, section 2.3 (from memory): 2.889 in the system at 6 an hour.
    expect(hoursInLine(2.888888889, 6)).toBeCloseTo(0.4814814815, 9);
  });
});
