import type { Lab } from '@buildweek/model';
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
  queueLab,
  station,
} from '../fixture/lab.ts';
import { handCalculation } from './hand-calculation.ts';

const RANGE = { fromWeek: 0, weeks: 4 };

function loadOf(of: Lab, name: string, range = RANGE) {
  const found = handCalculation(of, range).find((load) => load.name === name);
  if (found === undefined) throw new Error(`No load of "${name}"`);
  return found;
}

const print = { kind: 'typed', perBuild: constant(2), perPart: constant(1) } as const;

describe('handCalculation', () => {
  it('takes the load of a plain queue as arrivals times mean service over the hours of the week', () => {
    // 10 customers a week, 8 h each, one server: 80 / 168.
    expect(loadOf(queueLab(), 'server')).toMatchObject({
      kind: 'station',
      count: 1,
      demandHoursPerWeek: expect.closeTo(80, 9),
      availableHoursPerWeek: 168,
      load: expect.closeTo(80 / 168, 12),
    });
  });

  it('counts machines by full builds, with every phase that holds the machine', () => {
    const printer = machine('printer', {
      count: 2,
      capacity: 6,
      prepare: attended('run', 0.5),
      setUp: attended('run', 0.25),
      warmUp: constant(0.5),
      coolDown: { duration: constant(1), where: 'machine' },
      unload: attended('run', 0.25),
    });
    const one = lab({ machines: [printer], parts: [part('lever', [build('build', 'printer')], { print })] });
    // 30 pieces, 6 in a build: 5 builds of 0.5 + 0.25 + 0.5 + 2 + 6 × 1 + 1 + 0.25 = 10.5 h.
    expect(loadOf(one, 'printer')).toMatchObject({
      demandHoursPerWeek: expect.closeTo(52.5, 9),
      availableHoursPerWeek: 336,
    });
  });

  it('does not count cool-down outside of the machine', () => {
    const printer = machine('printer', {
      capacity: 3,
      coolDown: { duration: constant(9), where: 'outside' },
    });
    const one = lab({ machines: [printer], parts: [part('lever', [build('build', 'printer')], { print })] });
    expect(loadOf(one, 'printer').demandHoursPerWeek).toBeCloseTo(10 * (2 + 3), 9);
  });

  it('fills builds in whole pieces of one size, and to the last place where sizes differ', () => {
    const printer = machine('printer', { capacity: 10 });
    const big = part('big', [build('build', 'printer')], { print, space: 4 });
    const alone = lab({ machines: [printer], parts: [big] });
    // Two of size 4 in a room of 10: 30 pieces are 15 builds of 2 + 2 × 1 h.
    expect(loadOf(alone, 'printer').demandHoursPerWeek).toBeCloseTo(15 * 4, 9);
    const small = part('small', [build('build', 'printer')], { print, space: 1 });
    const both = lab({ machines: [printer], parts: [big, small] });
    // 12 builds for the big, 3 for the small, 2 h each and 1 h for each of the 60 pieces.
    expect(loadOf(both, 'printer').demandHoursPerWeek).toBeCloseTo(15 * 2 + 60, 9);
  });

  it('counts stations by full batches, of parts, jobs or builds', () => {
    const washing = (unit: 'parts' | 'jobs' | 'builds', capacity: number): Lab =>
      lab({
        machines: [machine('printer', { capacity: 6 })],
        stations: [station('washer', { unit, capacity })],
        parts: [
          part(
            'lever',
            [
              build('build', 'printer'),
              batch('wash', 'washer', constant(0.5), {
                level: unit === 'builds' ? 'build' : 'job',
                load: attended('run', 0.1),
                unload: attended('run', 0.2),
              }),
            ],
            { print },
          ),
        ],
      });
    // 0.8 h a batch. 30 parts at 12; 10 jobs at 4; 5 builds at 2: each 2.5 batches.
    expect(loadOf(washing('parts', 12), 'washer').demandHoursPerWeek).toBeCloseTo(2.5 * 0.8, 9);
    expect(loadOf(washing('jobs', 4), 'washer').demandHoursPerWeek).toBeCloseTo(2.5 * 0.8, 9);
    expect(loadOf(washing('builds', 2), 'washer').demandHoursPerWeek).toBeCloseTo(2.5 * 0.8, 9);
  });

  it('counts other duties and work against the hours on duty of people, and two-person work twice', () => {
    const two = lab({
      people: [people('technicians', 2, ['sand'], { otherDutiesShare: 0.25 })],
      parts: [
        part('lever', [bench('sand', attended('sand', 0.5, 2), 'part'), bench('pack', attended('sand', 1))]),
      ],
    });
    // 30 pieces × 0.5 h × 2 persons + 10 jobs × 1 h = 40 h, and 20 h of other duties, of 80 h.
    expect(loadOf(two, 'technicians')).toMatchObject({
      kind: 'people',
      demandHoursPerWeek: expect.closeTo(60, 9),
      availableHoursPerWeek: expect.closeTo(80, 9),
      load: expect.closeTo(0.75, 9),
    });
  });

  it('leaves out closed days of the weeks it is asked about', () => {
    const plain = lab({ people: [people('technicians', 1, ['sand'])] });
    const closed = {
      ...plain,
      calendars: plain.calendars.map((calendar) => ({ ...calendar, closedDays: [0, 1, 7] })),
    };
    // Four weeks of five days of eight hours, three of them closed.
    expect(loadOf(closed, 'technicians').availableHoursPerWeek).toBeCloseTo((17 * 8) / 4, 9);
    expect(loadOf(closed, 'technicians', { fromWeek: 2, weeks: 1 }).availableHoursPerWeek).toBeCloseTo(40, 9);
  });

  it('leaves out dated leave, and hours in which equipment is not there', () => {
    const away = lab({
      people: [people('technicians', 2, ['sand'], { leave: [{ person: 1, fromHour: 0, toHour: 120 }] })],
      stations: [station('borrowed', { calendar: 'day' })],
    });
    // Two persons at 40 h for four weeks, one of them away for the first.
    expect(loadOf(away, 'technicians').availableHoursPerWeek).toBeCloseTo((320 - 40) / 4, 9);
    expect(loadOf(away, 'borrowed').availableHoursPerWeek).toBeCloseTo(40, 9);
  });

  it('counts pieces that go round again, the watching of first layers, and not what is withdrawn', () => {
    const sanding = {
      ...bench('sand', attended('hands', 0.1), 'part'),
      rejects: { share: 0.2, backTo: 'build' },
    };
    const plain = lab({
      people: [people('technicians', 1, ['hands'])],
      machines: [machine('printer', { capacity: 3, firstLayers: attended('hands', 0.5) })],
      parts: [part('lever', [build('build', 'printer'), sanding], { print })],
    });
    const cancels = {
      chance: 0.4,
      after: { kind: 'constant', value: 1 },
      onlyBeforeStart: true,
    } as const;
    const half: Lab = {
      ...plain,
      demand: plain.demand.map((stream) => ({ ...stream, changes: { cancels, revises: null } })),
    };
    // 18 good pieces a week are 22.5 printed: 7.5 builds of 2 + 3 h; people 7.5 × 0.5 + 22.5 × 0.1 h.
    expect(loadOf(half, 'printer').demandHoursPerWeek).toBeCloseTo(37.5, 9);
    expect(loadOf(half, 'technicians').demandHoursPerWeek).toBeCloseTo(6, 9);
  });

  it('says with whom a group shares its work', () => {
    const shared = lab({
      people: [people('technicians', 1, ['sand']), people('helpers', 1, ['sand'], { calendar: 'day' })],
      parts: [part('lever', [bench('sand', attended('sand', 2))])],
    });
    expect(loadOf(shared, 'helpers')).toMatchObject({
      demandHoursPerWeek: expect.closeTo(10, 9),
      load: expect.closeTo(0.25, 9),
      note: 'Work for sand, builds and batches full. Shared with technicians as evenly as skills allow, whatever the hour; who is there when it is wanted, or alone can do some of it, will be busier.',
    });
  });

  it('averages growing demand over the weeks, and counts the dated jobs in them', () => {
    const growing = queueLab();
    const growth: Lab = {
      ...growing,
      demand: growing.demand.map((stream) => ({
        ...stream,
        arrivals: {
          kind: 'poisson',
          perWeek: 10,
          profile: null,
          growthPerMonth: 0.1,
          jobsPerArrival: { kind: 'fixed', value: 1 },
        },
      })),
    };
    // Growth of 10 % a month of 365.25 / 12 days: after 26 weeks 1.1 ^ (182 / 30.4375).
    const later = loadOf(growth, 'server', { fromWeek: 26, weeks: 1 });
    expect(later.demandHoursPerWeek).toBeCloseTo(80 * 1.1 ** (182 / 30.4375), 6);
    const dated: Lab = {
      ...growing,
      demand: growing.demand.map((stream) => ({
        ...stream,
        arrivals: {
          kind: 'dated',
          jobs: [1, 100, 170, 700].map((atHour) => ({ atHour, quantity: null, rush: null })),
        },
      })),
    };
    expect(loadOf(dated, 'server', { fromWeek: 0, weeks: 2 }).demandHoursPerWeek).toBeCloseTo((3 * 8) / 2, 9);
  });
});
