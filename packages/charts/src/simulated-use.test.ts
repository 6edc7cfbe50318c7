import type { HandLoad } from '@buildweek/results';
import { expect, test } from 'vitest';
import { resultsFixture } from './fixture/results-fixture.ts';
import { simulatedUse } from './simulated-use.ts';

const results = resultsFixture();

function hand(name: string, kind: HandLoad['kind']): HandLoad {
  return { name, kind, count: 1, demandHoursPerWeek: 1, availableHoursPerWeek: 2, load: 0.5, note: '' };
}

test('Machines are at work outside idle and waiting, and held outside idle.', () => {
  const use = simulatedUse(results, hand('powder', 'machine'));
  const units = results.machines.filter((machine) => machine.group === 'powder');
  const mean = (states: readonly string[]): number =>
    units.reduce(
      (sum, unit) =>
        sum + unit.states.reduce((all, one) => all + (states.includes(one.state) ? one.share.value : 0), 0),
      0,
    ) / units.length;
  expect(use?.working.value).toBeCloseTo(mean(['print', 'warm-up', 'cool-down', 'set-up', 'unload']), 10);
  expect(use?.held?.value).toBeCloseTo(1 - mean(['idle']), 10);
  expect(use?.held?.low ?? 1).toBeLessThan(use?.held?.value ?? 0);
});

test('People are compared by their share of the hours on duty.', () => {
  const use = simulatedUse(results, hand('technicians', 'people'));
  expect(use).toEqual({ working: results.people[0]?.busyShareOfDuty, held: null });
});

test('A line that speaks of no single group has no simulated figure.', () => {
  expect(simulatedUse(results, hand('hand work', 'people'))).toBeNull();
  expect(simulatedUse(results, hand('technicians', 'station'))).toBeNull();
});
