import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SkilledGroup, sharedLoads } from './shared-skills.ts';

const SKILLS = ['prepare', 'run', 'sand', 'inspect'];

/** The largest ratio of hours asked for to hours there over all sets of skills, set by set. */
function worstRatio(demand: ReadonlyMap<string, number>, groups: readonly SkilledGroup[]): number {
  let worst = 0;
  for (let mask = 1; mask < 1 << SKILLS.length; mask++) {
    const set = SKILLS.filter((_, position) => mask & (1 << position));
    const asked = set.reduce((sum, skill) => sum + (demand.get(skill) ?? 0), 0);
    const there = groups
      .filter((group) => group.skills.some((skill) => set.includes(skill)))
      .reduce((sum, group) => sum + group.availableHours, 0);
    if (there > 0) worst = Math.max(worst, asked / there);
  }
  return worst;
}

const anyGroups = fc.array(
  fc.record({
    skills: fc.subarray(SKILLS, { minLength: 1 }),
    availableHours: fc.integer({ min: 1, max: 80 }),
  }),
  { minLength: 1, maxLength: 5 },
);
const anyDemand = fc
  .array(fc.integer({ min: 0, max: 60 }), { minLength: 4, maxLength: 4 })
  .map((hours) => new Map(SKILLS.map((skill, index) => [skill, hours[index] ?? 0])));

describe('sharedLoads', () => {
  it('loads a group that alone has a skill with all of its work', () => {
    const demand = new Map([
      ['run', 30],
      ['sand', 30],
    ]);
    const groups = [
      { skills: ['run', 'sand'], availableHours: 40 },
      { skills: ['run'], availableHours: 40 },
    ];
    // Together 60 of 80 hours, and nobody but the first can sand, which is 30 of its 40: an even 75 % each.
    expect(sharedLoads(demand, groups)).toEqual([
      { groups: [0, 1], skills: ['run', 'sand'], demandHours: 60, availableHours: 80 },
    ]);
    // With 36 hours of sanding the first has 90 % whatever the other does, and the other all the running.
    demand.set('sand', 36);
    demand.set('run', 20);
    expect(sharedLoads(demand, groups)).toEqual([
      { groups: [0], skills: ['sand'], demandHours: 36, availableHours: 40 },
      { groups: [1], skills: ['run'], demandHours: 20, availableHours: 40 },
    ]);
  });

  it('gives a group of which nothing is asked no load', () => {
    const groups = [
      { skills: ['run'], availableHours: 40 },
      { skills: ['advise'], availableHours: 10 },
    ];
    expect(sharedLoads(new Map([['run', 10]]), groups)[1]).toEqual({
      groups: [1],
      skills: [],
      demandHours: 0,
      availableHours: 10,
    });
  });

  it('finds as heaviest load the worst of all sets of skills', () => {
    fc.assert(
      fc.property(anyDemand, anyGroups, (demand, groups) => {
        // Work that nobody can do is not there: it is an error of the scenario, found elsewhere.
        for (const skill of SKILLS) {
          if (!groups.some((group) => group.skills.includes(skill))) demand.set(skill, 0);
        }
        const [first] = sharedLoads(demand, groups);
        const ratio = (first?.demandHours ?? 0) / (first?.availableHours ?? 1);
        expect(ratio).toBeCloseTo(worstRatio(demand, groups), 9);
      }),
      { numRuns: 500 },
    );
  });

  it('gives all work to somebody, each group once, and never a heavier load after a lighter one', () => {
    fc.assert(
      fc.property(anyDemand, anyGroups, (demand, groups) => {
        const loads = sharedLoads(demand, groups);
        expect(loads.flatMap((load) => load.groups).sort()).toEqual(groups.map((_, index) => index));
        const doable = SKILLS.filter((skill) => groups.some((group) => group.skills.includes(skill)));
        const asked = doable.reduce((sum, skill) => sum + (demand.get(skill) ?? 0), 0);
        expect(loads.reduce((sum, load) => sum + load.demandHours, 0)).toBeCloseTo(asked, 9);
        const ratios = loads.map((load) => load.demandHours / load.availableHours);
        for (const [index, ratio] of ratios.slice(1).entries()) {
          expect(ratio).toBeLessThanOrEqual((ratios[index] ?? 0) + 1e-9);
        }
      }),
      { numRuns: 500 },
    );
  });
});
