import { describe, expect, it } from 'vitest';
import { at, loggedJob } from '../fixture/logged-job.ts';
import type { LoggedJobs } from '../logged-jobs.ts';
import { arrivalFacts } from './arrival-facts.ts';
import { spanText } from './week-blocks.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;
const MONDAY = at('2026-03-02T00:00');
const HOURS = { days: [0, 1, 2, 3, 4], fromHour: 8, toHour: 16, counted: 500 };

/** Mulberry32 by T. Ettinger, public domain: numbers for tests of a package that imports no generator. */
function draws(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
}

interface Told {
  readonly weeks: number;
  /** Jobs an hour of a week, by the day from 0 for Monday and the hour. */
  readonly rate: (week: number, day: number, hour: number) => number;
  readonly draw: () => number;
}

/** A log of Poisson arrivals, told to the minute. */
function log({ weeks, rate, draw }: Told): LoggedJobs {
  const jobs = [];
  for (let hour = 0; hour < weeks * 168; hour++) {
    const expected = rate(Math.floor(hour / 168), Math.floor((hour % 168) / 24), hour % 24);
    let time = expected === 0 ? 1 : -Math.log(draw()) / expected;
    while (time < 1) {
      const asked = MONDAY + Math.floor(((hour + time) * HOUR) / MINUTE) * MINUTE;
      jobs.push(loggedJob({ asked, row: jobs.length + 2 }));
      time -= Math.log(draw()) / expected;
    }
  }
  const counted = { read: jobs.length, kept: jobs.length, troubles: [] };
  return { from: MONDAY, until: MONDAY + weeks * WEEK, jobs, counted };
}

/** Working days from 8 to 16; twice as much on Monday. */
const busyMondays: Told['rate'] = (_, day, hour) =>
  day > 4 || hour < 8 || hour >= 16 ? 0 : (day === 0 ? 2 : 1) * (hour < 12 ? 1.2 : 0.6);

describe('arrivalFacts', () => {
  const draw = draws(1);
  const facts = arrivalFacts(log({ weeks: 40, rate: busyMondays, draw }), HOURS, draw);

  it('finds the blocks of the week, with the one day that stands out, and rates near the truth', () => {
    const named = new Map(facts.blocks?.map((block) => [block.name, block]));
    expect([...named.keys()]).toEqual([
      'mon, morning',
      'mon, afternoon',
      'tue-fri, morning',
      'tue-fri, afternoon',
      'evenings of working days',
      'nights and days off',
    ]);
    const truths = {
      'mon, morning': 2.4,
      'mon, afternoon': 1.2,
      'tue-fri, morning': 1.2,
      'tue-fri, afternoon': 0.6,
    };
    for (const [name, truth] of Object.entries(truths)) {
      const rate = named.get(name)?.rate;
      expect(rate?.low).toBeLessThan(truth);
      expect(rate?.high).toBeGreaterThan(truth);
    }
    expect(named.get('mon, morning')?.spans.map(spanText)).toEqual(['mon 08:00-12:00']);
    expect(named.get('nights and days off')?.jobs).toBe(0);
    const hours = facts.blocks?.reduce((sum, block) => sum + block.hours, 0);
    expect(hours).toBeCloseTo(40 * 168, 6);
  });

  it('sees no more variation, clustering or trend than there is', () => {
    expect(facts.weekly).toHaveLength(40);
    expect(facts.weekVariation).toBe(0);
    expect(facts.withinDays?.pValue).toBeGreaterThan(0.01);
    expect(facts.withinDays?.unitMinutes).toBe(1);
    expect(facts.trend?.isClear).toBe(false);
  });

  it('pools days that the counts do not tell apart', () => {
    const even: Told['rate'] = (_, day, hour) => (day > 4 || hour < 8 || hour >= 16 ? 0 : 1);
    const own = draws(2);
    const { blocks } = arrivalFacts(log({ weeks: 30, rate: even, draw: own }), HOURS, own);
    expect(blocks?.map(({ name }) => name)).toContain('mon-fri, morning');
  });

  it('finds weeks that differ beyond chance', () => {
    const own = draws(3);
    const factors = Array.from({ length: 60 }, (_, week) => (week % 3 === 0 ? 0.4 : 1.3));
    const varied: Told['rate'] = (week, day, hour) => busyMondays(week, day, hour) * (factors[week] ?? 1);
    const found = arrivalFacts(log({ weeks: 60, rate: varied, draw: own }), HOURS, own);
    expect(found.dispersion?.pValue).toBeLessThan(1e-6);
    // Factors of 0.4 and 1.3 in the shares of a third and two thirds vary by 0.424.
    expect(found.weekVariation).toBeGreaterThan(0.3);
    expect(found.weekVariation).toBeLessThan(0.6);
  });

  it('finds demand that grows', () => {
    const own = draws(4);
    const growing: Told['rate'] = (week, day, hour) =>
      busyMondays(week, day, hour) * Math.exp((0.7 * week) / 40);
    const { trend } = arrivalFacts(log({ weeks: 40, rate: growing, draw: own }), HOURS, own);
    expect(trend?.isClear).toBe(true);
    const { value = 0, low = 0, high = 0 } = trend?.fitted.growth ?? {};
    // Four standard errors; the interval is 1.96 of them on either side.
    expect(Math.abs(value - 0.7)).toBeLessThan((4 * (high - low)) / 2 / 1.96);
  });

  it('says nothing of hours where the log has only dates, or of weeks where there are few', () => {
    const short = log({ weeks: 3, rate: busyMondays, draw: draws(5) });
    const dated = { ...short, jobs: short.jobs.map((job) => ({ ...job, askedHasClock: false })) };
    const found = arrivalFacts(dated, HOURS, draws(5));
    expect(found.blocks).toBeNull();
    expect(found.withinDays).toBeNull();
    expect(found.dispersion).toBeNull();
    expect(found.weekVariation).toBe(0);
  });
});
