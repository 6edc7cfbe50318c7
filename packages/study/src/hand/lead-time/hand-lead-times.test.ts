import type { ArrivalPattern, Duration, Lab } from '@buildweek/model';
import type { HandEstimate } from '@buildweek/results';
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
  queueLab,
  station,
} from '../../fixture/lab.ts';
import { meanSojourn } from '../formulas/many-servers.ts';
import { handLeadTimes } from './hand-lead-times.ts';

const RANGE = { fromWeek: 0, weeks: 4 };

function estimateOf(of: Lab, part: string | null = null): HandEstimate {
  const found = handLeadTimes(of, RANGE).find((one) => one.part === part);
  if (found === undefined) throw new Error(`No lead time of "${part}"`);
  return found.estimate;
}

function byHand(of: Lab, part: string | null = null): Extract<HandEstimate, { kind: 'by hand' }> {
  const estimate = estimateOf(of, part);
  if (estimate.kind === 'refused') throw new Error(estimate.reason);
  return estimate;
}

function exponential(mean: number): Duration {
  return { distribution: { kind: 'exponential', mean }, typicalHours: mean };
}

function arriving(of: Lab, arrivals: ArrivalPattern): Lab {
  return { ...of, demand: of.demand.map((stream) => ({ ...stream, arrivals })) };
}

const print = { kind: 'typed', perBuild: constant(2), perPart: constant(1) } as const;

describe('handLeadTimes', () => {
  it('of a plain queue is its sojourn by Erlang C, within the 3 % that the formula of Sakasegawa errs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.double({ min: 0.3, max: 0.99, noNaN: true }),
        (servers, utilization) => {
          const plain = queueLab((utilization * servers * 168) / 8, 8);
          const many = { ...plain, stations: [station('server', { count: servers })] };
          const exact = meanSojourn({
            arrivalRate: (utilization * servers) / 8,
            meanServiceHours: 8,
            servers,
          });
          expect(Math.abs(byHand(many).leadTimeHours / exact - 1)).toBeLessThan(0.03);
        },
      ),
    );
  });

  it('of jobs that never meet is the sum of their stages', () => {
    const seldom = lab(
      {
        people: [people('technicians', 1, ['hands'])],
        machines: [
          machine('printer', {
            capacity: 6,
            setUp: attended('hands', 0.25),
            warmUp: constant(0.5),
            coolDown: { duration: constant(1), where: 'outside' },
            unload: attended('hands', 0.25),
          }),
        ],
        stations: [station('washer')],
        parts: [
          part(
            'lever',
            [
              bench('prepare', attended('hands', 0.4)),
              build('build', 'printer'),
              batch('wash', 'washer', constant(0.5), {
                load: attended('hands', 0.1),
                unload: attended('hands', 0.2),
              }),
              {
                ...bench('dry', attended('hands', 0)),
                kind: 'wait',
                duration: constant(3),
                requesterChance: null,
              },
              bench('sand', attended('hands', 0.2), 'part'),
            ],
            { print },
          ),
        ],
      },
      1e-6,
    );
    // 0.4 + (0.25 + 0.5 + 2 + 3 × 1 + 0.25 + 1) + (0.1 + 0.5 + 0.2) + 3 + 3 × 0.2 h.
    const { leadTimeHours, stageHours } = byHand(seldom, 'lever');
    expect(stageHours).toBeCloseTo(11.8, 9);
    expect(leadTimeHours).toBeCloseTo(11.8, 4);
  });

  it('lets jobs wait for people in hours on duty, whatever the hour', () => {
    const busy = lab(
      {
        people: [people('technicians', 1, ['hands'])],
        parts: [part('lever', [bench('sand', { ...attended('hands', 1), duration: exponential(1) })])],
      },
      30,
    );
    // M/M/1 at 30 of 40 hours: 0.75 / 0.25 × 1 h of waiting.
    expect(byHand(busy)).toMatchObject({ peopleHours: expect.closeTo(3, 9), stageHours: 1 });
    const other = { ...busy, people: [people('technicians', 1, ['hands'], { otherDutiesShare: 0.2 })] };
    // 32 hours are left, and everything takes 1.25 times as long: 0.9375 / 0.0625 × 1.25 h.
    expect(byHand(other).peopleHours).toBeCloseTo(18.75, 9);
  });

  it('counts breakdowns as longer and more variable service', () => {
    const sometimesDown = queueLab(10, 8);
    const repair = { kind: 'service', visit: { kind: 'constant', value: 2 }, calendar: null } as const;
    const down: Lab = {
      ...sometimesDown,
      stations: [
        station('server', {
          breakdowns: [
            {
              name: 'pump',
              by: 'running hours',
              between: { kind: 'exponential', mean: 16 },
              effect: 'build goes on after the repair',
              repair: { ...repair, response: { kind: 'constant', value: 2 } },
            },
          ],
        }),
      ],
    };
    // A = 16 / 20, te = 10 h, ce² = 1 + 0.8 × 0.2 × 4 / 8 = 1.08; u = 100 / 168.
    const wait = ((1 + 1.08) / 2) * (100 / 68) * 10;
    expect(byHand(down)).toMatchObject({
      stageHours: expect.closeTo(8, 9),
      troubleHours: expect.closeTo(2, 9),
      equipmentHours: expect.closeTo(wait, 9),
    });
  });

  it('has more waiting where jobs come in bursts, and none by chance where all is even', () => {
    const even = (jobs: number): Lab =>
      arriving(
        {
          ...queueLab(),
          parts: [part('customer', [batch('service', 'server', constant(8), { basis: 'job' })])],
        },
        {
          kind: 'renewal',
          gap: { kind: 'constant', value: 10 * jobs },
          jobsPerArrival: { kind: 'fixed', value: jobs },
        },
      );
    expect(byHand(even(1))).toMatchObject({ leadTimeHours: 8, equipmentHours: 0 });
    const bursts = arriving(queueLab(), {
      kind: 'poisson',
      perWeek: 5,
      profile: null,
      growthPerMonth: 0,
      jobsPerArrival: { kind: 'fixed', value: 2 },
    });
    // ca² = 2 for pairs: 1.5 times the wait of single arrivals.
    expect(byHand(bursts).equipmentHours).toBeCloseTo(1.5 * byHand(queueLab()).equipmentHours, 9);
  });

  it('lets jobs wait until their build is full, where it starts no sooner', () => {
    const launch = machine('printer').launch;
    const full = (waitedHours: number | null): Lab =>
      lab({
        machines: [machine('printer', { capacity: 12, launch: { ...launch, fullShare: 1, waitedHours } })],
        parts: [part('lever', [build('build', 'printer')], { print })],
      });
    // 10 jobs a week of 3 pieces, 4 to a build: 3 / (2 × 10 / 168) h of batching, 2 + 12 h of build.
    expect(byHand(full(null))).toMatchObject({
      batchHours: expect.closeTo((3 * 168) / 20, 9),
      stageHours: expect.closeTo(14, 9),
    });
    // After 16.8 h one more job has come: 2 jobs to a build, 8.4 h of batching on average.
    expect(byHand(full(16.8))).toMatchObject({
      batchHours: expect.closeTo(8.4, 9),
      stageHours: expect.closeTo(8, 9),
    });
  });

  it('fills builds that start at once only as far as the machines need it', () => {
    const crowded = (jobsPerWeek: number): Lab =>
      lab(
        {
          machines: [machine('printer', { capacity: 30 })],
          parts: [
            part('lever', [build('build', 'printer')], {
              print: { kind: 'typed', perBuild: constant(10), perPart: constant(0.1) },
            }),
          ],
        },
        jobsPerWeek,
      );
    expect(byHand(crowded(2))).toMatchObject({ batchHours: 0, stageHours: expect.closeTo(10.3, 9) });
    // One job to a build would take 309 of 168 hours.
    const shared = byHand(crowded(30));
    expect(shared.batchHours).toBeGreaterThan(0);
    expect(shared.stageHours).toBeGreaterThan(10.5);
    // Full builds of 10 jobs take 13 h: 168 / 13 × 10 jobs are too many.
    expect(estimateOf(crowded(130))).toEqual({
      kind: 'refused',
      reason: '101 % of the hours of “printer” are asked for, trouble counted: the queue grows without end.',
    });
  });

  it('builds a large job in several builds, one after the other', () => {
    const large = lab(
      {
        machines: [machine('printer', { capacity: 1 })],
        parts: [part('lever', [build('build', 'printer')], { print })],
      },
      1e-6,
    );
    expect(byHand(large).stageHours).toBeCloseTo(9, 9);
    const three = { ...large, machines: [machine('printer', { capacity: 1, count: 3 })] };
    expect(byHand(three).stageHours).toBeCloseTo(3, 9);
  });

  it('sends jobs round again whose pieces are rejected or whose build is lost', () => {
    const sand = { ...bench('sand', attended('hands', 1)), rejects: { share: 0.2, backTo: 'sand' } };
    const again = lab(
      { people: [people('technicians', 1, ['hands'])], parts: [part('lever', [sand])] },
      1e-6,
    );
    const single: Lab = {
      ...again,
      demand: again.demand.map((stream) => ({ ...stream, quantity: { kind: 'fixed', value: 1 } })),
    };
    expect(byHand(single).stageHours).toBeCloseTo(1.25, 6);
    // The largest of three geometric numbers, less one: 3 q/(1−q) − 3 q²/(1−q²) + q³/(1−q³) with q = 0.2.
    expect(byHand(again).stageHours).toBeCloseTo(1 + 0.75 - 0.125 + 1 / 124, 6);
    const failing = lab(
      {
        machines: [
          machine('printer', {
            capacity: 3,
            failure: { chancePerBuild: 0.2, perPrintHour: 0, loses: 'the build', cleaning: null },
          }),
        ],
        parts: [part('lever', [build('build', 'printer')], { print })],
      },
      1e-6,
    );
    // A quarter of a build in vain for each good one, each half a print of 5 h.
    expect(byHand(failing)).toMatchObject({
      stageHours: expect.closeTo(5, 9),
      troubleHours: expect.closeTo(0.625, 9),
    });
  });

  it('has jobs that leave a build together wait for each other', () => {
    const together = lab(
      {
        people: [people('technicians', 1, ['hands'], { calendar: 'always' })],
        machines: [
          machine('printer', {
            count: 50,
            capacity: 12,
            launch: { ...machine('printer').launch, fullShare: 1 },
          }),
        ],
        parts: [part('lever', [build('build', 'printer'), bench('sand', attended('hands', 1))], { print })],
      },
      0.01,
    );
    // Four come at once: on average three halves of an hour.
    expect(byHand(together).peopleHours).toBeCloseTo(1.5, 3);
  });

  it('refuses an endless backlog, work that nobody is there for, and people who cannot keep up', () => {
    expect(estimateOf(arriving(queueLab(), { kind: 'kept in the lab', jobs: 4 }), 'customer')).toMatchObject({
      kind: 'refused',
      reason: expect.stringContaining('An endless backlog'),
    });
    const sanding = (hours: number): Lab =>
      lab({
        people: [people('technicians', 1, ['hands'])],
        parts: [part('lever', [bench('sand', attended('hands', hours))])],
      });
    expect(estimateOf(sanding(4))).toEqual({
      kind: 'refused',
      reason:
        '100 % of the hours of “technicians” are asked for, trouble counted: the queue grows without end.',
    });
    const closed = { ...sanding(1), calendars: [{ name: 'day', weekly: [], closedDays: [], extra: [] }] };
    expect(estimateOf(closed)).toEqual({
      kind: 'refused',
      reason: 'Nobody who can do “hands” is on duty in these weeks.',
    });
  });

  it('averages over jobs, and says nothing of a lab of which nothing is asked', () => {
    const two = lab({
      stations: [station('first', { count: 1000 }), station('second', { count: 1000 })],
      parts: [
        part('short', [batch('run', 'first', constant(2))]),
        part('long', [batch('run', 'second', constant(10))]),
      ],
    });
    const [short, long] = two.demand;
    if (short === undefined || long === undefined) throw new Error('No demand');
    const mixed: Lab = {
      ...two,
      demand: [
        short,
        {
          ...(arriving(
            { ...two, demand: [long] },
            {
              kind: 'poisson',
              perWeek: 30,
              profile: null,
              growthPerMonth: 0,
              jobsPerArrival: { kind: 'fixed', value: 1 },
            },
          ).demand[0] ?? long),
        },
      ],
    };
    expect(handLeadTimes(mixed, RANGE).map(({ part }) => part)).toEqual([null, 'short', 'long']);
    expect(byHand(mixed).leadTimeHours).toBeCloseTo((10 * 2 + 30 * 10) / 40, 6);
    expect(handLeadTimes(lab({}), RANGE)).toEqual([]);
  });
});
