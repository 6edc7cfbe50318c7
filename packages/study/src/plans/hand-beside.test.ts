import { describe, expect, it } from 'vitest';
import { queueLab } from '../fixture/lab.ts';
import { estimate, measure } from '../fixture/plans.ts';
import { handBeside, handSentence } from './hand-beside.ts';

function simulated(hours: number, people = 1, machines = 2, builds = 3) {
  return [
    measure('mean lead time', estimate(hours, 1)),
    measure('wait for people', estimate(people)),
    measure('wait for machines', estimate(machines)),
    measure('wait for a build to fill', estimate(builds)),
  ];
}

describe('the hand calculation beside a plan', () => {
  it('gives both lead times, and no reason where they are within a factor of two', () => {
    expect(handSentence(simulated(20), 11)).toBe(
      'The mean lead time is 20.0 hours simulated and 11.0 by formulas of queues.',
    );
    expect(handSentence(simulated(20), 10)).toMatch(/queues\.$/);
    expect(handSentence(simulated(20), 40)).toMatch(/queues\.$/);
  });

  it('names the longest wait as the reason where the simulation is more than twice as long', () => {
    expect(handSentence(simulated(20, 12), 9)).toBe(
      'The mean lead time is 20.0 hours simulated and 9.0 by formulas of queues: of the simulated time 12.0 hours are waiting for people and for the shift to begin, and the formulas know no shifts.',
    );
    expect(handSentence(simulated(20, 1, 2, 14), 9)).toContain(
      '14.0 hours are waiting for a build or batch to fill.',
    );
    expect(handSentence(simulated(20, 1, 13, 4), 9)).toContain('13.0 hours are waiting for machines');
  });

  it('says what does better in the lab where the formulas are more than twice as long', () => {
    expect(handSentence(simulated(20), 41)).toContain('do better than the formulas allow.');
  });

  it('says that a queue grows without end where there is no formula', () => {
    expect(handSentence(simulated(20), null)).toContain('some load is 100 % or more');
  });

  it('is that of M/M/1 for one server with times at random', () => {
    // 10 jobs a week of 8 hours: load 80/168, mean time in the system 8 / (1 − 80/168) = 15.27 h. Source: M/M/1.
    const { handHours, handCalculation, fewestByHand } = handBeside(queueLab(10, 8), 4);
    expect(handHours).toBeCloseTo(8 / (1 - 80 / 168), 6);
    expect(handCalculation[0]?.load).toBeCloseTo(80 / 168, 9);
    expect(fewestByHand).toEqual([{ name: 'server', belowOne: 1, comfortable: 1 }]);
  });
});
