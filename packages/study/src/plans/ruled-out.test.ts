import type { DemandStream, Lab, Target } from '@buildweek/model';
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
import { candidate, onTimeShare, shareWithin } from '../fixture/plans.ts';
import { ruledOut } from './ruled-out.ts';

const CLOCK = { kind: 'clock', hours: 24 } as const;

/** Rings are printed, levers are made by hand; of each ten jobs a week. */
function twoParts(
  more: Partial<Lab> = {},
  streams: Partial<Record<'ring' | 'lever', Partial<DemandStream>>> = {},
): Lab {
  const base = lab({
    people: [people('technicians', 1, ['hands'])],
    machines: [machine('resin')],
    stations: [station('washer')],
    parts: [
      part('ring', [build('print', 'resin'), batch('wash', 'washer', constant(1))]),
      part('lever', [bench('file', attended('hands', 1))]),
    ],
  });
  const demand = base.demand.map((stream) => ({ ...stream, ...streams[stream.name as 'ring' | 'lever'] }));
  return { ...base, demand, ...more };
}

function reason(of: Lab, ...targets: readonly Target[]): string | null {
  return ruledOut(candidate(of), targets, 13);
}

const NO_RESIN = { machines: [machine('resin', { count: 0 })] };

describe('a plan is ruled out', () => {
  it('when it costs more than the budget', () => {
    const of = (committedCost: number, purchase: number, target: 'purchases' | 'year') =>
      ruledOut(
        candidate(twoParts(), { committedCost, purchase }),
        [{ kind: 'budget', wording: 'budget at most 1000', of: target, atMost: 1000 }],
        13,
      );
    expect(of(1001, 0, 'year')).toBe('costs more than “budget at most 1000”');
    expect(of(1000, 9999, 'year')).toBeNull();
    expect(of(0, 1001, 'purchases')).toBe('costs more than “budget at most 1000”');
    expect(of(9999, 1000, 'purchases')).toBeNull();
  });

  it('when a machine is lacking for too many of the jobs', () => {
    expect(reason(twoParts(NO_RESIN), shareWithin(0.6))).toBe(
      'has no “resin” for “ring”, so that “60 % of jobs within 10 h” is out of reach',
    );
    // Half of the jobs can be made.
    expect(reason(twoParts(NO_RESIN), shareWithin(0.5))).toBeNull();
  });

  it('when a station is lacking', () => {
    expect(reason(twoParts({ stations: [station('washer', { count: 0 })] }), shareWithin(0.6))).toContain(
      'has no “washer” for “ring”',
    );
  });

  it('when nobody has a skill, whoever else is there', () => {
    expect(reason(twoParts({ people: [people('helpers', 5, ['sweep'])] }), shareWithin(0.6))).toBe(
      'has nobody who can “hands”, which “lever” needs, so that “60 % of jobs within 10 h” is out of reach',
    );
    expect(reason(twoParts({ people: [people('technicians', 0, ['hands'])] }), shareWithin(0.6))).toContain(
      'has nobody who can “hands”',
    );
  });

  it('when work for two at once finds only one, of all groups together', () => {
    const heavy = [part('lever', [bench('lift', attended('hands', 1, 2))])];
    const of = (...groups: ReturnType<typeof people>[]) =>
      reason(lab({ parts: heavy, people: groups }), shareWithin(0.9));
    expect(of(people('technicians', 1, ['hands']))).toContain(
      'has 1 of the 2 persons who have to “hands” at once for “lever”',
    );
    expect(of(people('technicians', 1, ['hands']), people('students', 1, ['hands']))).toBeNull();
  });

  it('by a target on one part only for that part', () => {
    const on = (name: string) => shareWithin(0.9, { jobs: { part: name, rush: null } });
    expect(reason(twoParts(NO_RESIN), on('ring'))).toContain('has no “resin”');
    expect(reason(twoParts(NO_RESIN), on('lever'))).toBeNull();
  });

  it('by a target on rush jobs only for rush jobs', () => {
    // Of rush jobs four fifths are levers.
    const of = twoParts(NO_RESIN, { ring: { rushShare: 0.2 }, lever: { rushShare: 0.8 } });
    const on = (share: number, rush: boolean) => shareWithin(share, { jobs: { part: null, rush } });
    expect([0.79, 0.8, 0.81].map((share) => reason(of, on(share, true)) === null)).toEqual([
      true,
      true,
      false,
    ]);
    expect([0.19, 0.2, 0.21].map((share) => reason(of, on(share, false)) === null)).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('by promises only for jobs that have one', () => {
    const promised = twoParts(NO_RESIN, { lever: { due: CLOCK, rushDue: CLOCK } });
    expect(reason(promised, onTimeShare(0.9))).toBeNull();
    expect(reason(twoParts(NO_RESIN, { ring: { due: CLOCK, rushDue: CLOCK } }), onTimeShare(0.9))).toContain(
      'has no “resin”',
    );
  });
});

describe('a plan is not ruled out', () => {
  it('for lacking what is always sent out; such jobs count among those that can be finished', () => {
    const sentOut = {
      always: true,
      waitingJobsAbove: null,
      waitedHours: null,
    } as unknown as DemandStream['sentOut'];
    expect(reason(twoParts(NO_RESIN, { ring: { sentOut } }), shareWithin(0.9))).toBeNull();
    // Levers cannot be made, rings come from outside: half of the jobs.
    const noHands = { ...NO_RESIN, people: [] };
    expect(reason(twoParts(noHands, { ring: { sentOut } }), shareWithin(0.5))).toBeNull();
    expect(reason(twoParts(noHands, { ring: { sentOut } }), shareWithin(0.6))).toContain('“lever”');
  });

  it('where some work may be sent out, since what is lacking may be got round', () => {
    const sentOut = {
      always: false,
      waitingJobsAbove: 3,
      waitedHours: null,
    } as unknown as DemandStream['sentOut'];
    expect(reason(twoParts(NO_RESIN, { ring: { sentOut } }), shareWithin(0.9))).toBeNull();
  });

  it('on the belief that more helps: one of everything is enough to try', () => {
    expect(reason(twoParts(), shareWithin(0.999), onTimeShare(0.999))).toBeNull();
  });

  it('by how busy people or machines are', () => {
    const busy: Target = {
      kind: 'busy',
      wording: 'people busy at most 1 %',
      of: 'people',
      group: null,
      atMost: 0.01,
      meaning: { kind: 'long run' },
    };
    expect(reason(twoParts(NO_RESIN), busy)).toBeNull();
  });

  it('for a share of single periods, of which one may have no job that cannot be made', () => {
    const meaning = { kind: 'chance of a period', chance: 0.2 } as const;
    expect(reason(twoParts(NO_RESIN), shareWithin(0.9, { meaning }))).toBeNull();
  });

  it('where jobs that can be made are without end', () => {
    const endless = { arrivals: { kind: 'kept in the lab', jobs: 3 } } as const;
    expect(reason(twoParts(NO_RESIN, { lever: endless }), shareWithin(0.9))).toBeNull();
  });

  it('when those who cannot be served may all have cancelled', () => {
    const cancels = { chance: 0.9, after: { kind: 'constant', value: 1 }, onlyBeforeStart: false } as const;
    const of = twoParts(NO_RESIN, { ring: { changes: { cancels, revises: null } } });
    // One ring a week is left of ten, and ten levers: ten elevenths.
    expect(reason(of, shareWithin(0.9))).toBeNull();
    expect(reason(of, shareWithin(0.92))).toContain('has no “resin”');
  });

  it('by rush where a list says job by job what is rush', () => {
    const jobs = [{ atHour: 9, quantity: 1, rush: true }];
    const of = twoParts(NO_RESIN, { lever: { arrivals: { kind: 'dated', jobs } }, ring: { rushShare: 0.5 } });
    const rush = { part: null, rush: true } as const;
    expect(reason(of, shareWithin(0.9, { jobs: rush }))).toBeNull();
    expect(reason(of, shareWithin(0.9))).toContain('has no “resin”');
  });
});
