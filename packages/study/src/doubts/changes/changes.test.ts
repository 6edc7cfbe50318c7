import { createSimulator, hashHistory, meanOf } from '@buildweek/core';
import type { Distribution, DoubtSubject, Lab } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  attended,
  batch,
  bench,
  build,
  constant,
  lab,
  machine,
  part,
  people,
  station,
} from '../../fixture/lab.ts';
import { applyDoubt } from './apply-doubt.ts';
import { scaleDistribution } from './scale-distribution.ts';

const exponential = (mean: number): Distribution => ({ kind: 'exponential', mean });

/** A lab in which there is something of everything that may be in doubt. */
const FULL: Lab = lab(
  {
    people: [
      people('technicians', 2, ['run', 'sand'], {
        absence: { chancePerDay: 0.05, days: { kind: 'fixed', value: 1 } },
      }),
      people('helpers', 1, ['sand']),
    ],
    machines: ['printer', 'other printer'].map((name) =>
      machine(name, {
        setUp: attended('run', 0.25),
        firstLayers: attended('run', 0.1),
        unload: attended('run', 0.1),
        materialChanges: [{ from: null, to: null, duration: constant(0.2), attended: true }],
        failure: {
          chancePerBuild: 0.1,
          perPrintHour: 0.01,
          loses: 'the build',
          cleaning: attended('run', 0.3),
        },
        breakdowns: [
          {
            name: 'jam',
            by: 'running hours',
            between: exponential(20),
            effect: 'loses the build',
            repair: { kind: 'own', work: attended('run', 0.5) },
          },
        ],
      }),
    ),
    stations: [station('washer')],
    parts: [
      part(
        'cap',
        [
          build('print', 'printer'),
          batch('wash', 'washer', constant(0.2), { load: attended('run', 0.1) }),
          { ...bench('sand', attended('sand', 0.4), 'part'), rejects: { share: 0.1, backTo: 'print' } },
        ],
        { print: { kind: 'typed', perBuild: constant(2), perPart: constant(0.1) } },
      ),
      part('box', [build('print', 'other printer'), bench('check', attended('sand', 0.2))], {
        print: { kind: 'typed', perBuild: constant(3), perPart: constant(0) },
      }),
    ],
  },
  12,
);
const RUSH: Lab = { ...FULL, demand: FULL.demand.map((stream) => ({ ...stream, rushShare: 0.2 })) };

const SUBJECTS: readonly DoubtSubject[] = [
  { kind: 'demand', of: null },
  { kind: 'demand', of: 'cap' },
  { kind: 'work times', by: 'everything' },
  { kind: 'work times', by: 'skill', of: 'sand' },
  { kind: 'work times', by: 'stage', of: 'wash' },
  { kind: 'print times', of: 'printer' },
  { kind: 'breakdowns', of: 'printer' },
  { kind: 'failed builds', of: 'printer' },
  { kind: 'rejects', of: 'cap' },
  { kind: 'absence', of: 'technicians' },
  { kind: 'share of rush', of: 'cap' },
];

function hashOf(changed: Lab): string {
  return hashHistory(
    createSimulator(changed).simulate({
      seed: '1',
      replication: 0,
      ignoredWeeks: 0,
      weeks: 3,
      capWeeks: 2,
      trace: false,
      queueWaits: false,
    }),
  );
}

describe('a doubt', () => {
  it.each(SUBJECTS)('about %j changes nothing at all at a factor of 1', (about) => {
    expect(applyDoubt(RUSH, about, 1)).toEqual(RUSH);
    expect(hashOf(applyDoubt(RUSH, about, 1))).toBe(hashOf(RUSH));
  });

  it.each(SUBJECTS)(
    'about %j changes what happens at another, and leaves the lab it came from alone',
    (about) => {
      const before = structuredClone(RUSH);
      expect(hashOf(applyDoubt(RUSH, about, 1.9))).not.toBe(hashOf(RUSH));
      expect(RUSH).toEqual(before);
    },
  );

  it('changes only what it is about', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SUBJECTS),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (about, factor) => {
          const changed = applyDoubt(RUSH, about, factor);
          const named = 'of' in about ? about.of : null;
          // Whoever has another name is as before.
          for (const list of ['demand', 'machines', 'people'] as const) {
            RUSH[list].forEach((item, index) => {
              if (about.kind === 'work times' || named === null || item.name === named) return;
              expect(changed[list][index]).toEqual(item);
            });
          }
          for (const [list, kinds] of [
            ['demand', ['demand', 'share of rush']],
            ['people', ['absence']],
            ['parts', ['work times', 'print times', 'rejects']],
            ['machines', ['work times', 'print times', 'breakdowns', 'failed builds']],
          ] as const) {
            if (!(kinds as readonly string[]).includes(about.kind)) expect(changed[list]).toEqual(RUSH[list]);
          }
          expect(changed.calendars).toBe(RUSH.calendars);
          expect(changed.dispatch).toBe(RUSH.dispatch);
        },
      ),
    );
  });

  it('is taken back by its inverse', () => {
    const skill: DoubtSubject = { kind: 'work times', by: 'skill', of: 'run' };
    const back = applyDoubt(applyDoubt(RUSH, skill, 2), skill, 0.5);
    expect(back).toEqual(RUSH);
    const changed = applyDoubt(RUSH, skill, 2);
    expect(changed.machines[0]?.setUp?.duration.typicalHours).toBe(0.5);
    expect(changed.machines[0]?.materialChanges[0]?.duration.typicalHours).toBe(0.4);
    // First layers are a part of the print, and sanding asks for another skill.
    expect(changed.machines[0]?.firstLayers).toEqual(RUSH.machines[0]?.firstLayers);
    expect(changed.parts[1]).toEqual(RUSH.parts[1]);
  });

  it('of breakdowns may go down to none', () => {
    const changed = applyDoubt(RUSH, { kind: 'breakdowns', of: null }, 0);
    expect(changed.machines.every(({ breakdowns }) => breakdowns.length === 0)).toBe(true);
  });
});

const positive = fc.double({ min: 0.01, max: 100, noNaN: true });
const distribution: fc.Arbitrary<Distribution> = fc.oneof(
  fc.record({ kind: fc.constant('constant' as const), value: positive }),
  fc
    .tuple(positive, positive)
    .map(([a, b]) => ({ kind: 'uniform' as const, low: Math.min(a, b), high: a + b })),
  fc
    .tuple(positive, positive, positive)
    .map(([a, b, c]) => ({ kind: 'pert' as const, low: a, mode: a + b, high: a + b + c })),
  fc.record({ kind: fc.constant('normal' as const), mean: positive, standardDeviation: positive }),
  fc.record({
    kind: fc.constant('lognormal' as const),
    logMean: fc.double({ min: -2, max: 2, noNaN: true }),
    logStandardDeviation: fc.double({ min: 0.1, max: 1, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('exponential' as const), mean: positive }),
  fc.record({ kind: fc.constant('gamma' as const), shape: positive, scale: positive }),
  fc.record({
    kind: fc.constant('weibull' as const),
    shape: fc.double({ min: 0.5, max: 5, noNaN: true }),
    scale: positive,
  }),
  fc.record({ kind: fc.constant('measured' as const), values: fc.array(positive, { minLength: 1 }) }),
);

describe('a scaled distribution', () => {
  it('has the mean of the other times the factor', () => {
    fc.assert(
      fc.property(distribution, fc.double({ min: 0.1, max: 10, noNaN: true }), (one, factor) => {
        const ratio = meanOf(scaleDistribution(one, factor)) / (meanOf(one) * factor);
        expect(ratio).toBeCloseTo(1, 9);
      }),
    );
  });
});
