import type { AttendedWork, Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { CALENDARS, sanding, stateHours, steps } from '../fixture/bench-lab.ts';
import { at, attended, dated, lab, part, people, workStage } from '../fixture/lab.ts';

/** A duration that people think to be something else. */
function misjudged(typicalHours: number, hours: number): AttendedWork['duration'] {
  return { distribution: { kind: 'constant', value: hours }, typicalHours };
}

describe('Work that may not pause', () => {
  it('starts when it fits before the end of the window exactly, and not a minute later', () => {
    expect(steps(sanding([at('mon', '15:00')], 1))[0]).toBe(
      'mon 15:00 step starts job 0 sand by technicians 1',
    );
    expect(steps(sanding([at('mon', '15:01')], 1))[0]).toBe(
      'tue 08:00 step starts job 0 sand by technicians 1',
    );
  });

  it('waits behind a break in which it would not fit, and pausable work does not (case C03, hand computed)', () => {
    const arrivals = [at('mon', '11:30')];
    const calendar = { calendar: 'with lunch' };
    expect(steps(sanding(arrivals, 1, { pausable: false }, calendar))).toEqual([
      'mon 12:30 step starts job 0 sand by technicians 1',
      'mon 13:30 step ends job 0 sand by technicians 1',
    ]);
    expect(steps(sanding(arrivals, 1, { pausable: true }, calendar))).toEqual([
      'mon 11:30 step starts job 0 sand by technicians 1',
      'mon 12:00 step pauses job 0 sand by technicians 1',
      'mon 12:30 step resumes job 0 sand by technicians 1',
      'mon 13:00 step ends job 0 sand by technicians 1',
    ]);
  });

  it('goes through where one window of a calendar ends and the next begins', () => {
    expect(steps(sanding([at('mon', '11:00')], 2, {}, { calendar: 'without a gap' }))).toEqual([
      'mon 11:00 step starts job 0 sand by technicians 1',
      'mon 13:00 step ends job 0 sand by technicians 1',
    ]);
  });

  it('is judged on its typical duration, never on the drawn one', () => {
    const optimistic = sanding([at('mon', '15:00')], 0, { duration: misjudged(0.5, 2) });
    expect(steps(optimistic)).toEqual([
      'mon 15:00 step starts job 0 sand by technicians 1',
      'mon 16:00 step pauses job 0 sand by technicians 1',
      'tue 08:00 step resumes job 0 sand by technicians 1',
      'tue 09:00 step ends job 0 sand by technicians 1',
    ]);
    const cautious = sanding([at('mon', '15:00')], 0, { duration: misjudged(2, 0.5) });
    expect(steps(cautious)[0]).toBe('tue 08:00 step starts job 0 sand by technicians 1');
  });

  it('is judged on its drawn duration when the lab asks for it', () => {
    const onDrawn = (typical: number, drawn: number): Lab =>
      sanding(
        [at('mon', '15:00')],
        0,
        { duration: misjudged(typical, drawn) },
        {},
        {
          dispatch: {
            order: ['machine', 'station', 'bench'],
            fitOn: 'drawn',
            within: 'promise',
            rushInterrupts: false,
          },
        },
      );
    expect(steps(onDrawn(0.5, 2))[0]).toBe('tue 08:00 step starts job 0 sand by technicians 1');
    expect(steps(onDrawn(2, 0.5))[0]).toBe('mon 15:00 step starts job 0 sand by technicians 1');
  });

  it('overruns up to the grace as overtime', () => {
    const overrun = sanding([at('mon', '15:00')], 0, { duration: misjudged(0.5, 2) }, { graceHours: 1 });
    expect(steps(overrun)).toEqual([
      'mon 15:00 step starts job 0 sand by technicians 1',
      'mon 17:00 step ends job 0 sand by technicians 1',
    ]);
    expect(stateHours(overrun, 'overtime')).toBe(1);
    expect(stateHours(overrun, 'work')).toBe(1);
    expect(stateHours(overrun, 'idle')).toBe(39);
    expect(stateHours(overrun, 'off')).toBe(127);
  });

  it('pauses beyond the grace, and what is left may pause at the end of every window from then on', () => {
    const long = sanding([at('mon', '15:00')], 0, { duration: misjudged(0.5, 10) }, { graceHours: 0.5 });
    expect(steps(long)).toEqual([
      'mon 15:00 step starts job 0 sand by technicians 1',
      'mon 16:30 step pauses job 0 sand by technicians 1',
      'tue 08:00 step resumes job 0 sand by technicians 1',
      'tue 16:00 step pauses job 0 sand by technicians 1',
      'wed 08:00 step resumes job 0 sand by technicians 1',
      'wed 08:30 step ends job 0 sand by technicians 1',
    ]);
    expect(stateHours(long, 'overtime')).toBe(0.5);
  });

  it('works through a break that the grace covers, and is no overtime any more when the next window begins', () => {
    const group = { calendar: 'with lunch', graceHours: 1 };
    const through = sanding([at('mon', '11:00')], 0, { duration: misjudged(0.5, 3) }, group);
    expect(steps(through)).toEqual([
      'mon 11:00 step starts job 0 sand by technicians 1',
      'mon 14:00 step ends job 0 sand by technicians 1',
    ]);
    expect(stateHours(through, 'overtime')).toBe(0.5);
    expect(stateHours(through, 'work')).toBe(2.5);
  });
});

describe('Pausable work', () => {
  it('starts even with a minute left and goes on over nights and weekends (case C04, hand computed)', () => {
    const night = sanding([at('fri', '23:00')], 10, { pausable: true }, { calendar: 'night' });
    expect(steps(night)).toEqual([
      'fri 23:00 step starts job 0 sand by technicians 1',
      'sat 06:00 step pauses job 0 sand by technicians 1',
      'week 2 mon 22:00 step resumes job 0 sand by technicians 1',
      'week 2 tue 01:00 step ends job 0 sand by technicians 1',
    ]);
    expect(steps(sanding([at('mon', '15:59')], 1, { pausable: true }))[0]).toBe(
      'mon 15:59 step starts job 0 sand by technicians 1',
    );
  });

  it('does not go on on a closed day (case C05, hand computed)', () => {
    const holiday = sanding([at('fri', '15:00')], 2, { pausable: true }, { calendar: 'holiday' });
    expect(steps(holiday).slice(1)).toEqual([
      'fri 16:00 step pauses job 0 sand by technicians 1',
      'week 2 tue 08:00 step resumes job 0 sand by technicians 1',
      'week 2 tue 09:00 step ends job 0 sand by technicians 1',
    ]);
  });

  it('never turns into overtime', () => {
    const overrun = sanding([at('mon', '15:00')], 2, { pausable: true }, { graceHours: 4 });
    expect(steps(overrun)[1]).toBe('mon 16:00 step pauses job 0 sand by technicians 1');
    expect(stateHours(overrun, 'overtime')).toBe(0);
  });

  it('is resumed by anyone with the skill, at its old rank', () => {
    const handedOver = lab({
      calendars: CALENDARS,
      people: [
        people('early', 1, ['sand'], { calendar: 'morning' }),
        people('late', 1, ['sand'], { calendar: 'afternoon' }),
      ],
      parts: [part('lever', [workStage('sand', attended('sand', 2, { pausable: true }))])],
      demand: [
        dated('lever', [at('mon', '11:00'), at('mon', '11:15')]),
        { ...dated('lever', [at('mon', '11:30')], { rush: true }), name: 'urgent' },
      ],
    });
    // The rush job goes before what was begun, what was begun before the job that came after it.
    expect(steps(handedOver)).toEqual([
      'mon 11:00 step starts job 0 sand by early 1',
      'mon 12:00 step pauses job 0 sand by early 1',
      'mon 12:00 step starts job 2 sand by late 1',
      'mon 14:00 step ends job 2 sand by late 1',
      'mon 14:00 step resumes job 0 sand by late 1',
      'mon 15:00 step ends job 0 sand by late 1',
      'mon 15:00 step starts job 1 sand by late 1',
      'mon 16:00 step pauses job 1 sand by late 1',
      'tue 08:00 step resumes job 1 sand by early 1',
      'tue 09:00 step ends job 1 sand by early 1',
    ]);
  });
});
