import type { DemandStream, SendOutRule } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  buildStage,
  constant,
  dated,
  HOUR,
  lab,
  lines,
  machine,
  part,
  play,
  printed,
} from '../fixture/lab.ts';
import { finished } from '../fixture/timeline.ts';

const byTheClock = (hours: number): SendOutRule['leadTime'] => ({ kind: 'clock', duration: constant(hours) });

const workingDays = (days: number, cutOffHour: number | null = null): SendOutRule['leadTime'] => ({
  kind: 'working days',
  days: { kind: 'constant', value: days },
  cutOffHour,
});

function rule(more: Partial<SendOutRule>): SendOutRule {
  return { always: false, waitingJobsAbove: null, promiseAtRisk: false, leadTime: byTheClock(30), ...more };
}

/** One printer that takes ten hours for a build, day and night, and jobs at these hours. */
function printShop(sentOut: SendOutRule | null, hours: readonly number[], more: Partial<DemandStream> = {}) {
  return lab({
    machines: [machine('printers')],
    parts: [part('lever', [buildStage('build', 'printers')], { print: printed(10) })],
    demand: [{ ...dated('lever', hours), sentOut, ...more }],
  });
}

const hoursOutside = (history: ReturnType<typeof play>): number => {
  const hours = history.partHours[0];
  const step = hours?.steps.findIndex(({ phase }) => phase === 'outside') ?? -1;
  return (hours?.work[step] ?? Number.NaN) / HOUR;
};

describe('Work that is sent out', () => {
  it('takes part in nothing of the lab, and is done when its lead time is over', () => {
    const history = play(printShop(rule({ always: true }), [1, 2]));
    expect(lines(history)).toEqual([
      'mon 01:00 job arrives job 0',
      'mon 01:00 step starts job 0 sent out outside',
      'mon 02:00 job arrives job 1',
      'mon 02:00 step starts job 1 sent out outside',
      'tue 07:00 step ends job 0 sent out outside',
      'tue 07:00 job ends job 0',
      'tue 08:00 step ends job 1 sent out outside',
      'tue 08:00 job ends job 1',
    ]);
    expect(history.machines[0]?.runs).toBe(0);
    expect(history.queues.find(({ kind }) => kind === 'machine')?.area).toBe(0);
  });

  it('counts as a job of the lab until it is back, and its hours are a step of their own', () => {
    const history = play(printShop(rule({ always: true }), [1, 2]));
    expect(history.laws.jobArea).toBe(60 * HOUR);
    expect(history.laws.jobStays).toBe(60 * HOUR);
    expect(history.laws.leadTimeImbalance).toBe(0);
    expect(hoursOutside(history)).toBe(60);
    expect(history.jobClasses[0]).toMatchObject({ arrived: 2, sentOut: 2, unfinished: 0 });
  });

  it('is counted by where it was made: pieces in the lab, pieces and jobs outside', () => {
    const shop = printShop(rule({ waitingJobsAbove: 0 }), [0, 1, 2], {
      quantity: { kind: 'fixed', value: 3 },
    });
    const history = play({ ...shop, machines: [machine('printers', { capacity: 3 })] });
    // The second waits while the first is built, the third finds one waiting.
    expect(finished(history)).toEqual(['mon 10:00 job 0', 'mon 20:00 job 1', 'tue 08:00 job 2']);
    expect(history.partHours[0]).toMatchObject({ madePieces: 6, sentOutJobs: 1, sentOutPieces: 3 });
    expect(history.weeks.finishedParts[0]).toBe(9);
  });

  it('is back by the clock, or at closing time of the n-th working day', () => {
    const days = (n: number, hours: number[]) =>
      finished(play(printShop(rule({ always: true, leadTime: workingDays(n) }), hours)));
    expect(days(1, [at('mon', '10:00')])).toEqual(['tue 16:00 job 0']);
    expect(days(2, [at('fri', '10:00')])).toEqual(['week 2 tue 16:00 job 0']);
    // On Saturday asked for counts as on Monday.
    expect(days(1, [at('sat', '10:00')])).toEqual(['week 2 tue 16:00 job 0']);
  });

  it('is back after whole working days, at least one: what is drawn is rounded', () => {
    const after = (value: number) => {
      const leadTime = { kind: 'working days', days: { kind: 'constant', value }, cutOffHour: null } as const;
      return finished(play(printShop(rule({ always: true, leadTime }), [at('mon', '10:00')])));
    };
    expect(after(1.4)).toEqual(['tue 16:00 job 0']);
    expect(after(1.6)).toEqual(['wed 16:00 job 0']);
    expect(after(0.2)).toEqual(['tue 16:00 job 0']);
  });

  it('counts from the next working day when it is asked for after the cut-off', () => {
    const leadTime = workingDays(1, 12);
    const history = play(
      printShop(rule({ always: true, leadTime }), [at('mon', '11:00'), at('mon', '12:00')]),
    );
    expect(finished(history)).toEqual(['tue 16:00 job 0', 'wed 16:00 job 1']);
  });
});

describe('A job is sent out', () => {
  it('always, when the process is not owned: the lab may own no machine of it', () => {
    const shop = printShop(rule({ always: true }), [0]);
    const history = play({ ...shop, machines: [machine('printers', { count: 0 })] });
    expect(finished(history)).toEqual(['tue 06:00 job 0']);
    expect(history.machines).toEqual([]);
  });

  it('when more jobs than stated wait for the machines of its first build as it arrives', () => {
    const history = play(printShop(rule({ waitingJobsAbove: 2, leadTime: byTheClock(1) }), [0, 1, 2, 3, 4]));
    // Job 0 is built; 1, 2 and 3 find none, one and two waiting; 4 finds three.
    expect(finished(history)).toEqual([
      'mon 05:00 job 4',
      'mon 10:00 job 0',
      'mon 20:00 job 1',
      'tue 06:00 job 2',
      'tue 16:00 job 3',
    ]);
  });

  it('by what waits at that instant: jobs that came at once before it are among them', () => {
    const history = play(printShop(rule({ waitingJobsAbove: 1, leadTime: byTheClock(1) }), [0, 0, 0]));
    // Nothing starts before all three are there, so the third finds two.
    expect(finished(history)).toEqual(['mon 01:00 job 2', 'mon 10:00 job 0', 'mon 20:00 job 1']);
  });

  it('by the jobs that wait, where one of which a part is built already counts by the share that waits', () => {
    // Of the first job four of six pieces are built at once and two wait, a third of a job, when the second comes.
    const found = (waitingJobsAbove: number) => {
      const shop = printShop(rule({ waitingJobsAbove, leadTime: byTheClock(1) }), [0, 1], {
        quantity: { kind: 'fixed', value: 6 },
      });
      return play({ ...shop, machines: [machine('printers', { capacity: 4 })] }).jobClasses[0]?.sentOut;
    };
    expect(found(0)).toBe(1);
    expect(found(1)).toBe(0);
  });

  it('when its typical work and the machine hours that go before it, shared over the machines, pass the promise', () => {
    const sent = (hours: number[], due: number, machines: number) => {
      const shop = printShop(rule({ promiseAtRisk: true, leadTime: byTheClock(1) }), hours, {
        due: { kind: 'clock', hours: due },
      });
      return play({ ...shop, machines: [machine('printers', { count: machines })] }).jobClasses[0]?.sentOut;
    };
    // Ten hours of work, promised in 10 h: just in time; in 9 h: at risk.
    expect(sent([0], 10, 1)).toBe(0);
    expect(sent([0], 9, 1)).toBe(1);
    // What runs already is left out; the third finds one waiting: 10 + 10 hours.
    expect(sent([0, 1, 2], 20, 1)).toBe(0);
    expect(sent([0, 1, 2], 19, 1)).toBe(1);
    // With two machines the fourth finds one waiting: 10 + 10 / 2 hours.
    expect(sent([0, 1, 2, 3], 15, 2)).toBe(0);
    expect(sent([0, 1, 2, 3], 14, 2)).toBe(1);
  });

  it('by the machine hours of builds that waiting jobs share, not of one build for each', () => {
    const sent = (due: number) => {
      const shop = printShop(rule({ promiseAtRisk: true, leadTime: byTheClock(1) }), [0, 1, 1, 1, 2], {
        due: { kind: 'clock', hours: due },
      });
      const history = play({ ...shop, machines: [machine('printers', { capacity: 2 })] });
      return history.jobClasses[0]?.sentOut;
    };
    // Three wait, two to a build: two builds of ten hours before the last, and its own.
    expect(sent(30)).toBe(0);
    expect(sent(29)).toBe(1);
  });

  it('never for its promise when it has none, nor for jobs that go after it', () => {
    expect(play(printShop(rule({ promiseAtRisk: true }), [0, 1, 2, 3])).jobClasses[0]?.sentOut).toBe(0);
    const rush = printShop(rule({ promiseAtRisk: true }), [], { rushDue: { kind: 'clock', hours: 10 } });
    const jobs = [0, 1, 2].map((atHour) => ({ atHour, quantity: null, rush: atHour === 2 }));
    const history = play({
      ...rush,
      demand: rush.demand.map((one) => ({ ...one, arrivals: { kind: 'dated', jobs } })),
    });
    expect(history.jobClasses[1]).toMatchObject({ arrived: 1, sentOut: 0 });
  });

  it('always late where the lab owns no machine for it, when its promise counts', () => {
    const shop = printShop(rule({ promiseAtRisk: true }), [0], { due: { kind: 'clock', hours: 1000 } });
    expect(play({ ...shop, machines: [machine('printers', { count: 0 })] }).jobClasses[0]?.sentOut).toBe(1);
  });
});

describe('The requester of a job that is sent out', () => {
  const changes = (hours: number, onlyBeforeStart = false) => ({
    chance: 1,
    after: { kind: 'constant', value: hours } as const,
    onlyBeforeStart,
  });

  it('may withdraw it', () => {
    const history = play(
      printShop(rule({ always: true }), [0], { changes: { cancels: changes(5), revises: null } }),
    );
    expect(lines(history).at(-1)).toBe('mon 05:00 job is cancelled job 0');
    expect(history.jobClasses[0]).toMatchObject({ arrived: 1, cancelled: 1, sentOut: 0, unfinished: 0 });
    expect(history.laws.jobArea).toBe(5 * HOUR);
    expect(history.partHours[0]).toMatchObject({ sentOutJobs: 0, finishedJobs: 0 });
  });

  it('may change it: it is sent again with its lead time from then, and what went before is lost to the requester', () => {
    const history = play(
      printShop(rule({ always: true }), [0], { changes: { cancels: null, revises: changes(5) } }),
    );
    expect(finished(history)).toEqual(['tue 11:00 job 0']);
    expect(hoursOutside(history)).toBe(30);
    expect(history.partHours[0]?.waits[0]).toBe(5 * HOUR);
    expect(history.laws.leadTimeImbalance).toBe(0);
  });

  it('may not, if only before the start: it has been ordered', () => {
    const early = { cancels: changes(5, true), revises: changes(6, true) };
    expect(finished(play(printShop(rule({ always: true }), [0], { changes: early })))).toEqual([
      'tue 06:00 job 0',
    ]);
  });
});
