import type { AttendedWork, Lab } from '@buildweek/model';
import { describe, expect, it, vi } from 'vitest';
import { sanding, stateHours, steps } from '../fixture/bench-lab.ts';
import { at, attended, dated, part, people, play, workStage } from '../fixture/lab.ts';
import { begun, ended } from '../fixture/timeline.ts';
import { Recorder } from '../observe/recorder.ts';
import { PERSON_OTHER_DUTIES } from './person.ts';

describe('Work for two persons', () => {
  const TWO = { persons: 2 };
  const pair = (hours: number, arrival: number, work: Partial<AttendedWork>): Lab =>
    sanding(
      [arrival],
      hours,
      { ...TWO, ...work },
      {},
      {
        people: [
          people('day', 1, ['sand', 'print'], { calendar: 'day' }),
          people('middle', 1, ['sand', 'print', 'wash'], { calendar: 'middle' }),
        ],
      },
    );

  it('needs both to be there', () => {
    expect(steps(pair(1, at('mon', '08:00'), {}))).toEqual([
      'mon 10:00 step starts job 0 sand by day 1 and middle 1',
      'mon 11:00 step ends job 0 sand by day 1 and middle 1',
    ]);
  });

  it('starts only when it fits before either of them goes', () => {
    expect(begun(play(pair(2, at('mon', '14:00'), {})), 'sand')[0]).toMatch(/^mon 14:00/);
    expect(begun(play(pair(2, at('mon', '14:01'), {})), 'sand')[0]).toMatch(/^tue 10:00/);
  });

  it('is never split: it pauses for both when one of them goes, and both come back to it', () => {
    const testLab = pair(3, at('mon', '14:00'), { pausable: true });
    expect(steps(testLab)).toEqual([
      'mon 14:00 step starts job 0 sand by day 1 and middle 1',
      'mon 16:00 step pauses job 0 sand by day 1 and middle 1',
      'tue 10:00 step resumes job 0 sand by day 1 and middle 1',
      'tue 11:00 step ends job 0 sand by day 1 and middle 1',
    ]);
  });

  it('takes the two with the fewest skills who are free, and lets single work have the third', () => {
    const testLab = sanding(
      [at('mon', '07:00')],
      1,
      TWO,
      {},
      {
        people: [
          people('able', 1, ['sand', 'print', 'wash']),
          people('printers', 1, ['sand', 'print']),
          people('sanders', 1, ['sand']),
        ],
        parts: [
          part('lever', [workStage('sand', attended('sand', 1, TWO))]),
          part('ring', [workStage('sand', attended('sand', 1))]),
        ],
        demand: [dated('lever', [at('mon', '07:00')]), dated('ring', [at('mon', '07:30')])],
      },
    );
    expect(begun(play(testLab), 'sand')).toEqual([
      'mon 08:00 job 0 by sanders 1 and printers 1',
      'mon 08:00 job 1 by able 1',
    ]);
  });
});

describe('Other duties', () => {
  const SHARE = { otherDutiesShare: 0.2 };

  it('take their stated share of the hours on duty in the long run', () => {
    // Idle otherwise: each day 1.6 h fall due at a moment V × 8 h before closing, V uniform, and what is not
    // done is carried over, at most x hours with probability 1 − exp(−1.59 x): 1.59 solves
    // E exp(θ (1.6 − 8 V)) = 1 (Lundberg's inequality, from memory). Above 9 h: one in a million.
    const testLab = sanding([], 1, {}, { ...SHARE, count: 1 });
    const done = stateHours(testLab, 'other duties', 52);
    const due = 0.2 * 40 * 52;
    expect(done).toBeLessThanOrEqual(due);
    expect(done).toBeGreaterThan(due - 9);
  });

  it('take their share of hours that never end too', () => {
    // 4.8 h fall due each day at a moment V × 24 h before midnight; the same bound in days.
    const testLab = sanding([], 1, {}, { ...SHARE, calendar: 'always' });
    const done = stateHours(testLab, 'other duties', 52);
    const due = 0.2 * 168 * 52;
    expect(done).toBeLessThanOrEqual(due);
    expect(done).toBeGreaterThan(due - 27);
  });

  it('cut no task: who is busy does them afterwards, before other work', () => {
    const testLab = sanding([at('mon', '08:00'), at('mon', '09:00')], 7.9, {}, { otherDutiesShare: 0.0125 });
    // 6 minutes on Monday fall due while the first job goes on: they fill the rest of the shift.
    expect(steps(testLab)).toEqual([
      'mon 08:00 step starts job 0 sand by technicians 1',
      'mon 15:54 step ends job 0 sand by technicians 1',
      'tue 08:00 step starts job 1 sand by technicians 1',
      'tue 15:54 step ends job 1 sand by technicians 1',
    ]);
    const monday = play(testLab).people[0];
    expect(monday?.busyByHourOfWeek[15]).toBeCloseTo(1 / 2, 12);
  });

  it('are carried over to the next window when this one ends before they are done', () => {
    // The first job fills Monday to its last minute. The other nine windows of two weeks owe 14.4 h.
    const testLab = sanding([at('mon', '08:00')], 8, {}, SHARE);
    expect(ended(play(testLab), 'sand')).toEqual(['mon 16:00 job 0 by technicians 1']);
    const done = stateHours(testLab, 'other duties', 2);
    expect(done).toBeGreaterThan(14.4);
    expect(done).toBeLessThanOrEqual(16);
  });

  it('fall due once a day for who is there day and night, also when the last ones go on past midnight', () => {
    let blocks = 0;
    const book = Recorder.prototype.personState;
    vi.spyOn(Recorder.prototype, 'personState').mockImplementation(function (this: Recorder, person, now) {
      if (person.state === PERSON_OTHER_DUTIES) blocks++;
      book.call(this, person, now);
    });
    play(sanding([], 1, {}, { ...SHARE, calendar: 'always' }), { weeks: 52 });
    vi.restoreAllMocks();
    // One for each of 364 days; the last may be going on or due.
    expect(blocks).toBeGreaterThanOrEqual(363);
    expect(blocks).toBeLessThanOrEqual(364);
  });

  it('are not idleness: nobody idles while work waits and no duty is due', () => {
    const arrivals = Array.from({ length: 60 }, () => at('mon', '08:00'));
    const testLab = sanding(arrivals, 1, { pausable: true }, SHARE);
    expect(stateHours(testLab, 'idle')).toBe(0);
    expect(stateHours(testLab, 'work') + stateHours(testLab, 'other duties')).toBe(40);
    expect(ended(play(testLab), 'sand').length).toBeGreaterThan(30);
  });
});
