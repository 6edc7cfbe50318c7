import type { ArrivalPattern, Duration, Lab, OutsideLeadTime } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byHand, estimateOf } from '../../fixture/by-hand.ts';
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
import { handCalculation } from '../hand-calculation.ts';
import { handLeadTimes } from './hand-lead-times.ts';

const RANGE = { fromWeek: 0, weeks: 4 };

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
    expect(estimateOf({ ...queueLab(), stations: [station('server', { count: 0 })] })).toEqual({
      kind: 'refused',
      reason: 'Of “server” nothing is there in these weeks, though it is asked for.',
    });
    const closed = { ...sanding(1), calendars: [{ name: 'day', weekly: [], closedDays: [], extra: [] }] };
    expect(estimateOf(closed)).toEqual({
      kind: 'refused',
      reason: 'Nobody who can do “hands” is on duty in these weeks.',
    });
  });

  it('takes what is always made outside as long as it takes there, and leaves it out of the queues', () => {
    const sentOut = (leadTime: OutsideLeadTime): Lab => {
      const full = queueLab(30, 8);
      const rule = { always: true, waitingJobsAbove: null, promiseAtRisk: false, leadTime };
      return { ...full, demand: full.demand.map((stream) => ({ ...stream, sentOut: rule })) };
    };
    const byClock = sentOut({ kind: 'clock', duration: constant(100) });
    expect(byHand(byClock, 'customer')).toMatchObject({ leadTimeHours: 100, stageHours: 100 });
    expect(handCalculation(byClock, RANGE)[0]).toMatchObject({ name: 'server', load: 0 });
    // Five working days of a lab that opens on five days are a week.
    const days = { kind: 'working days', days: { kind: 'constant', value: 5 }, cutOffHour: null } as const;
    expect(byHand(sentOut(days)).leadTimeHours).toBeCloseTo(168, 9);
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
