import type { Lab } from '@buildweek/model';
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
} from '../fixture/lab.ts';
import { handAnswer } from './hand-answer.ts';
import { handCalculation } from './hand-calculation.ts';
import { handLeadTimes } from './lead-time/hand-lead-times.ts';

const RANGE = { fromWeek: 0, weeks: 4 };
const print = { kind: 'typed', perBuild: constant(2), perPart: constant(1) } as const;

/** One build of 5 h and 4.5 h of hand work for each job, 3 h of which anybody can do. */
function printing(jobsPerWeek: number, printers = 1, technicians = 1, helpers = 1): Lab {
  return lab(
    {
      people: [
        people('technicians', technicians, ['run', 'sand'], { otherDutiesShare: 0.2 }),
        people('helpers', helpers, ['sand']),
      ],
      machines: [machine('printer', { count: printers, capacity: 3, setUp: attended('run', 0.5) })],
      stations: [station('washer'), station('oven')],
      parts: [
        part(
          'lever',
          [
            build('build', 'printer'),
            batch('wash', 'washer', constant(1)),
            bench('check', attended('run', 1)),
            bench('sand', attended('sand', 1), 'part'),
          ],
          { print },
        ),
      ],
    },
    jobsPerWeek,
  );
}

function fewest(of: Lab, name: string) {
  return handAnswer(of, RANGE).fewest.find((one) => one.name === name);
}

describe('handAnswer', () => {
  it('gives the loads and lead times that stand beside a run', () => {
    const one = printing(10);
    const { loads, leadTimes } = handAnswer(one, RANGE);
    expect(loads).toEqual(handCalculation(one, RANGE));
    expect(leadTimes).toEqual(handLeadTimes(one, RANGE));
  });

  it('gives the fewest machines and stations with a load below 100 % and below 85 %', () => {
    // 5.5 h of a printer for each of 60 jobs: 330 of 168 h. None of the oven is needed.
    expect(fewest(printing(60), 'printer')).toEqual({
      name: 'printer',
      kind: 'machine',
      belowFull: 2,
      comfortable: 3,
    });
    expect(fewest(printing(60), 'washer')).toMatchObject({ belowFull: 1, comfortable: 1 });
    expect(fewest(printing(60), 'oven')).toMatchObject({ belowFull: 0, comfortable: 0 });
    // 56 jobs × 3 h fill one machine to the last hour, which is too much.
    const full = { ...printing(56), machines: [machine('printer', { capacity: 3 })] };
    const three = {
      ...full,
      parts: full.parts.map((one) => ({ ...one, print: { ...print, perBuild: constant(0) } })),
    };
    expect(fewest(three, 'printer')).toMatchObject({ belowFull: 2, comfortable: 2 });
  });

  it('gives the fewest people, who share what others can do too', () => {
    // 20 jobs: 30 h that only technicians can do, 60 h that anybody can. A technician has 32 of 40 h, a helper 40.
    expect(fewest(printing(20), 'technicians')).toMatchObject({ belowFull: 2, comfortable: 3 });
    // With one technician, 2 of 32 h are left for sanding; two helpers have 80 h for the rest.
    expect(fewest(printing(20), 'helpers')).toMatchObject({ belowFull: 2, comfortable: 2 });
    // Two technicians carry it with one helper; four without.
    expect(fewest(printing(20, 1, 4), 'helpers')).toMatchObject({ belowFull: 0 });
  });

  it('says when no number of people is enough', () => {
    const meetings = {
      ...printing(1),
      people: [
        people('technicians', 1, ['run'], { otherDutiesShare: 0.9 }),
        people('helpers', 1, ['sand'], { otherDutiesShare: 0 }),
      ],
    };
    expect(fewest(meetings, 'technicians')).toMatchObject({ belowFull: 1, comfortable: null });
    const never = { ...meetings, calendars: [{ name: 'day', weekly: [], closedDays: [], extra: [] }] };
    expect(fewest(never, 'technicians')).toMatchObject({ belowFull: null, comfortable: null });
  });

  it('gives numbers of machines that are just enough by the loads', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (jobs) => {
        const { belowFull, comfortable } = fewest(printing(jobs), 'printer') ?? {};
        const load = (printers: number): number =>
          handCalculation(printing(jobs, printers), RANGE).find(({ name }) => name === 'printer')?.load ?? 0;
        for (const [count, limit] of [
          [belowFull ?? 0, 1],
          [comfortable ?? 0, 0.85],
        ] as const) {
          expect(load(count)).toBeLessThan(limit);
          if (count > 1) expect(load(count - 1)).toBeGreaterThanOrEqual(limit - 1e-9);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('gives numbers of people that are just enough by the loads', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 4 }), (jobs, helpers) => {
        const { belowFull } = fewest(printing(jobs, 1, 1, helpers), 'technicians') ?? {};
        // With nobody in a group its load is 0, whatever is asked; so only from one person on.
        const worst = (technicians: number): number =>
          Math.max(
            ...handCalculation(printing(jobs, 1, technicians, helpers), RANGE)
              .filter(({ kind }) => kind === 'people')
              .map(({ load }) => load),
          );
        expect(belowFull).toBeGreaterThanOrEqual(1);
        expect(worst(belowFull ?? 0)).toBeLessThan(1);
        if ((belowFull ?? 0) > 1) expect(worst((belowFull ?? 0) - 1)).toBeGreaterThanOrEqual(1 - 1e-9);
      }),
      { numRuns: 30 },
    );
  });
});
