import { handAnswer } from '@buildweek/study';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generatedScenarios } from './generated-scenario.ts';
import { labOf } from './histories.ts';
import { SCENARIO_FILES } from './scenario-files.ts';

const RANGE = { fromWeek: 0, weeks: 13 };

/** What is expected of the hand calculation of any scenario. */
function expectSound(text: string): void {
  const lab = labOf(text);
  const { loads, leadTimes, fewest } = handAnswer(lab, RANGE);
  for (const { load } of loads) expect(load).toBeGreaterThanOrEqual(0);
  for (const { estimate } of leadTimes) {
    if (estimate.kind === 'refused') continue;
    const { kind, leadTimeHours, ...parts } = estimate;
    for (const hours of Object.values(parts)) expect(hours).toBeGreaterThanOrEqual(0);
    expect(Number.isFinite(leadTimeHours)).toBe(true);
    expect(Object.values(parts).reduce((sum, hours) => sum + hours, 0)).toBeCloseTo(leadTimeHours, 6);
  }
  for (const { name, kind, belowFull, comfortable } of fewest) {
    expect(comfortable ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(belowFull ?? 0);
    const load = loads.find((one) => one.kind === kind && one.name === name);
    if (kind !== 'people' && load !== undefined && belowFull !== null && load.count >= belowFull) {
      expect(load.load).toBeLessThan(1);
    }
  }
}

describe('The hand calculation of any scenario', () => {
  it('has lead times that are the sum of their parts, and no number that is none', () => {
    fc.assert(fc.property(generatedScenarios, expectSound), { seed: 20270322, numRuns: 200 });
  });

  it.each(SCENARIO_FILES)('so for $name', ({ text }) => expectSound(text));
});
