import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  dated,
  machine,
  part,
  people,
  play,
  printed,
  weekdays,
  workStage,
} from '../fixture/lab.ts';
import { NEVER, printing, setUpAndWarmUp } from '../fixture/printing-lab.ts';
import { begun, ended, piecesBegun } from '../fixture/timeline.ts';

describe('A launch rule', () => {
  it('launches at once when it states no condition at all', () => {
    expect(begun(play(printing({}, [[9, 1]])), 'build')).toEqual(['mon 09:00 job 0 on printers 1']);
  });

  it('launches when any of its conditions holds', () => {
    const either = { fullShare: 1, waitedHours: 4 };
    expect(piecesBegun(play(printing(either, [[9, 1]])), 'build', 'print')).toEqual([
      'mon 13:00 job 0 with 1 on printers 1',
    ]);
    const twoJobs = printing(either, [
      [9, 1],
      [10, 9],
    ]);
    expect(begun(play(twoJobs), 'build')[0]).toMatch(/^mon 10:00/);
  });
});

describe('A build that must be full', () => {
  it('starts as soon as the stated share of the capacity is waiting', () => {
    const testLab = printing({ fullShare: 0.6 }, [
      [8, 2],
      [9, 3],
      [10, 1],
    ]);
    expect(piecesBegun(play(testLab), 'build', 'print').sort()).toEqual([
      'mon 10:00 job 0 with 2 on printers 1',
      'mon 10:00 job 1 with 3 on printers 1',
      'mon 10:00 job 2 with 1 on printers 1',
    ]);
  });

  it('counts as full when the next job does not fit', () => {
    const testLab = printing({ fullShare: 1 }, [
      [8, 6],
      [9, 5],
    ]);
    expect(piecesBegun(play(testLab), 'build', 'print')).toEqual(['mon 09:00 job 0 with 6 on printers 1']);
  });

  it('is full with 24 pieces of a twenty-fourth, whatever the rounding', () => {
    const jobs = Array.from({ length: 24 }, (_, index) => [index / 4, 1] as const);
    const testLab = printing(
      { fullShare: 1 },
      jobs,
      { capacity: 1 },
      {
        parts: [part('lever', [buildStage('build', 'printers')], { print: printed(1), space: 1 / 24 })],
      },
    );
    expect(piecesBegun(play(testLab), 'build', 'print')).toHaveLength(24);
    expect(begun(play(testLab), 'build')[0]).toMatch(/^mon 05:45/);
  });
});

describe('A build whose first job has waited long enough', () => {
  it('starts after clock hours since that job was ready for building, at night too', () => {
    const testLab = printing({ waitedHours: 12 }, [
      [15, 1],
      [20, 1],
    ]);
    expect(begun(play(testLab), 'build')).toEqual([
      'tue 03:00 job 1 on printers 1',
      'tue 03:00 job 0 on printers 1',
    ]);
  });

  it('waits for the first-ranked job, not for the one that waits longest', () => {
    const testLab = printing(
      { waitedHours: 4 },
      [[8, 1]],
      {},
      {
        demand: [dated('lever', [8]), { ...dated('lever', [9], { rush: true }), name: 'urgent' }],
      },
    );
    expect(begun(play(testLab), 'build')[0]).toMatch(/^mon 13:00/);
  });
});

describe('The last call', () => {
  const lastCall = { beforeClosing: true };

  it('is the latest moment at which typical set-up and warm-up still fit before closing', () => {
    const history = play(printing(lastCall, [[9, 1]], setUpAndWarmUp));
    expect(begun(history, 'build', 'set-up')).toEqual(['mon 15:15 job 0 on printers 1 by technicians 1']);
    expect(ended(history, 'build', 'warm-up')).toEqual(['mon 16:00 job 0 on printers 1']);
  });

  it('holds from then until closing, as long as the set-up still fits', () => {
    const launchedAt = (hour: number): string | undefined =>
      begun(play(printing(lastCall, [[hour, 1]], setUpAndWarmUp)), 'build', 'set-up')[0];
    expect(launchedAt(at('mon', '15:30'))).toBe('mon 15:30 job 0 on printers 1 by technicians 1');
    expect(launchedAt(at('mon', '15:31'))).toBe('tue 15:15 job 0 on printers 1 by technicians 1');
    expect(launchedAt(at('fri', '15:31'))).toBe('week 2 mon 15:15 job 0 on printers 1 by technicians 1');
  });

  it('counts the set-ups that already wait for the same people', () => {
    const jobs = [
      [9, 1],
      [9, 1],
      [9, 1],
    ] as const;
    const three = { ...setUpAndWarmUp, count: 3, capacity: 1 };
    // Three set-ups of half an hour and a warm-up of a quarter before 16:00.
    expect(begun(play(printing(lastCall, jobs, three)), 'build', 'set-up')).toEqual([
      'mon 14:15 job 0 on printers 1 by technicians 1',
      'mon 14:45 job 1 on printers 2 by technicians 1',
      'mon 15:15 job 2 on printers 3 by technicians 1',
    ]);
    // Two persons need two rounds; in the second both have time.
    const twoPersons = { people: [people('technicians', 2, ['all'])] };
    expect(begun(play(printing(lastCall, jobs, three, twoPersons)), 'build', 'set-up')).toEqual([
      'mon 14:45 job 0 on printers 1 by technicians 1',
      'mon 15:15 job 1 on printers 2 by technicians 1',
      'mon 15:15 job 2 on printers 3 by technicians 2',
    ]);
  });

  it('comes earlier when somebody who could have helped goes home', () => {
    const weekly = weekdays([8, 16]);
    const testLab = printing(
      lastCall,
      [
        [9, 1],
        [9, 1],
        [9, 1],
      ],
      { setUp: attended('all', 0.4), count: 3, capacity: 1 },
      {
        calendars: [
          { name: 'day', weekly, closedDays: [], extra: [] },
          { name: 'short', weekly: weekdays([8, 15]), closedDays: [], extra: [] },
        ],
        people: [people('technicians', 1, ['all']), people('help', 1, ['all'], { calendar: 'short' })],
      },
    );
    // Two persons: two rounds of 24 min, 15:12. From 15:00 on one person: three rounds, 14:48, which is over.
    expect(begun(play(testLab), 'build', 'set-up')[0]).toBe('mon 15:00 job 0 on printers 1 by technicians 1');
  });

  it('comes earlier when another prepared build begins to wait for its set-up', () => {
    const history = play(
      printing(
        lastCall,
        [],
        {},
        {
          people: [people('technicians', 1, ['set up']), people('office', 1, ['prepare'])],
          machines: [
            machine('prepared', {
              prepare: attended('prepare', 2),
              setUp: attended('set up', 0.5, { pausable: true }),
            }),
            machine('printers', {
              setUp: attended('set up', 0.5),
              launch: { ...NEVER, beforeClosing: true },
            }),
          ],
          parts: [
            part('lever', [buildStage('build', 'printers')], { print: printed(1) }),
            part('ring', [buildStage('build', 'prepared')], { print: printed(1) }),
            part('cover', [workStage('sand', attended('set up', 1.25))]),
          ],
          demand: [
            dated('lever', [9]),
            dated('ring', [at('mon', '12:55')]),
            dated('cover', [at('mon', '13:45')]),
          ],
        },
      ),
    );
    // From 14:55 on a set-up waits: with this one two of half an hour before 16:00, so the last call is 15:00.
    expect(begun(history, 'build', 'set-up')).toEqual([
      'mon 15:00 job 0 on printers 1 by technicians 1',
      'mon 15:30 job 1 on prepared 1 by technicians 1',
    ]);
  });

  it('prefers the build that ends nearest to, but not before, the next attended hour when the lab asks for it', () => {
    const candidates = (preferAttendedEnd: boolean): Lab =>
      printing(
        { beforeClosing: true, preferAttendedEnd },
        [],
        { setUp: attended('all', 0.5) },
        {
          parts: [
            part('short', [buildStage('build', 'printers')], { print: printed(10), material: 'a' }),
            part('long', [buildStage('build', 'printers')], { print: printed(20), material: 'b' }),
            part('fitting', [buildStage('build', 'printers')], { print: printed(17), material: 'c' }),
          ],
          demand: [dated('short', [9]), dated('long', [10]), dated('fitting', [11])],
        },
      );
    // Launched at 15:30; 10 h end at 02:00, 17 h at 09:00, 20 h at 12:00; people come at 08:00.
    expect(begun(play(candidates(false)), 'build', 'print')[0]).toBe('mon 16:00 job 0 on printers 1');
    expect(begun(play(candidates(true)), 'build', 'print')[0]).toBe('mon 16:00 job 2 on printers 1');
  });
});

describe('A promise at risk', () => {
  it('launches the build at the promise less the typical length of the remaining route', () => {
    const route = [buildStage('build', 'printers'), workStage('inspect', attended('all', 0.5))];
    const testLab = printing(
      { fullShare: 1, promiseAtRisk: true },
      [],
      {},
      {
        parts: [part('lever', route, { print: printed(10) })],
        demand: [{ ...dated('lever', [at('mon', '08:00')]), due: { kind: 'clock', hours: 30 } }],
      },
    );
    // Due Tuesday 14:00; ten hours and a half before.
    expect(begun(play(testLab), 'build')).toEqual(['tue 03:30 job 0 on printers 1']);
  });

  it('counts the print time of all pieces of the job', () => {
    const testLab = printing(
      { fullShare: 1, promiseAtRisk: true },
      [],
      {},
      {
        parts: [part('lever', [buildStage('build', 'printers')], { print: printed(2, 1) })],
        demand: [
          {
            ...dated('lever', [at('mon', '08:00')]),
            quantity: { kind: 'fixed', value: 5 },
            due: { kind: 'clock', hours: 30 },
          },
        ],
      },
    );
    // Due Tuesday 14:00; two hours and five of one hour before.
    expect(begun(play(testLab), 'build')).toEqual(['tue 07:00 job 0 on printers 1']);
  });

  it('is that of any waiting job, and launches nothing without a promise', () => {
    const testLab = printing(
      { fullShare: 1, promiseAtRisk: true },
      [],
      {},
      {
        demand: [
          { ...dated('lever', [8]), name: 'without promise' },
          { ...dated('lever', [9]), due: { kind: 'clock', hours: 3 } },
        ],
      },
    );
    expect(begun(play(testLab), 'build').sort()).toEqual([
      'mon 11:00 job 0 on printers 1',
      'mon 11:00 job 1 on printers 1',
    ]);
    const none = printing({ fullShare: 1, promiseAtRisk: true }, [[8, 1]]);
    expect(begun(play(none), 'build')).toEqual([]);
  });
});
