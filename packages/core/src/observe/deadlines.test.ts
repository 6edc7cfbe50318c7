import type { Lab, WorkingDayRule } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { at, dated, lab, part, play, stream, waitStage, weekdays } from '../fixture/lab.ts';
import { hashHistory } from './hash.ts';

const days = (days: number, cutOffHour: number | null = null): WorkingDayRule => ({
  kind: 'working days',
  days,
  cutOffHour,
});

/** One part whose jobs take so long by the clock; the lab is open from 08:00 to 16:00, Monday to Friday. */
function waiting(hours: number, more: Partial<Lab>): Lab {
  return lab({ parts: [part('lever', [waitStage('dry', hours)])], ...more });
}

function endedBy(testLab: Lab, more: Parameters<typeof play>[1] = {}): number[] {
  return [...(play(testLab, more).jobClasses[0]?.endedBy ?? [])];
}

describe('deadlines in working days', () => {
  it('count the jobs that end by closing time of the n-th working day after they came', () => {
    // Come on Monday at 10:00 and on Friday at 10:00, and end 30 h later: Tuesday at 16:00 and Saturday at 16:00.
    const testLab = waiting(30, {
      demand: [dated('lever', [at('mon', '10:00'), at('fri', '10:00')])],
      deadlines: [days(0), days(1), days(2)],
    });
    expect(endedBy(testLab)).toEqual([0, 2, 2]);
    // A minute more, and the first one ends after closing time on Tuesday.
    expect(endedBy({ ...testLab, parts: waiting(30 + 1 / 60, {}).parts })).toEqual([0, 1, 2]);
  });

  it('count from the next working day what comes at or after the cut-off', () => {
    // Comes on Monday at 14:00 and ends on Wednesday at 16:00: two working days, or one from Tuesday on.
    const testLab = waiting(50, {
      demand: [dated('lever', [at('mon', '14:00')])],
      deadlines: [days(1), days(2), days(1, 14), days(1, 14.5)],
    });
    expect(endedBy(testLab)).toEqual([0, 1, 1, 0]);
  });

  it('end at closing time of the clock on the wall, which changes', () => {
    // In the night to Sunday the clock goes forward at 02:00: from Friday 16:00 to Monday 16:00 are 71 h.
    const clockChanges = [{ atHours: at('sun', '02:00'), localMinusElapsedHours: 1 }];
    const from = (hours: number): number[] =>
      endedBy(
        waiting(hours, {
          clockChanges,
          demand: [dated('lever', [at('fri', '10:00')])],
          deadlines: [days(1)],
        }),
      );
    expect(from(77)).toEqual([1]);
    expect(from(77 + 1 / 60)).toEqual([0]);
    // And backward: 73 h.
    const back = (hours: number): number[] =>
      endedBy(
        waiting(hours, {
          clockChanges: [{ atHours: at('sun', '03:00'), localMinusElapsedHours: -1 }],
          demand: [dated('lever', [at('fri', '10:00')])],
          deadlines: [days(1)],
        }),
      );
    expect(back(79)).toEqual([1]);
    expect(back(79 + 1 / 60)).toEqual([0]);
  });

  it('leave out closed days', () => {
    const testLab = waiting(50, {
      calendars: [{ name: 'day', weekly: weekdays([8, 16]), closedDays: [1], extra: [] }],
      demand: [dated('lever', [at('mon', '14:00')])],
      deadlines: [days(1)],
    });
    expect(endedBy(testLab)).toEqual([1]);
  });

  it('speak of the jobs that come in the measured weeks, rush and normal ones apart', () => {
    const arrivals = {
      kind: 'dated',
      jobs: [
        { atHour: at('mon', '10:00'), quantity: null, rush: false },
        { atHour: at('mon', '10:00', 1), quantity: null, rush: false },
        { atHour: at('mon', '10:00', 1), quantity: null, rush: true },
        { atHour: at('tue', '10:00', 1), quantity: null, rush: true },
      ],
    } as const;
    const testLab = waiting(1, { demand: [stream('lever', { arrivals })], deadlines: [days(0)] });
    const history = play(testLab, { ignoredWeeks: 1, weeks: 1 });
    expect(
      history.jobClasses.map(({ rush, arrived, endedBy: ended }) => [rush, arrived, ended?.[0]]),
    ).toEqual([
      [false, 1, 1],
      [true, 2, 2],
    ]);
  });

  it('do not count jobs that are cancelled, nor those that are unfinished when the replication ends', () => {
    const more = { weeks: 1, capWeeks: 0 };
    const late = waiting(100, { demand: [dated('lever', [at('fri', '10:00')])], deadlines: [days(30)] });
    expect(endedBy(late, more)).toEqual([0]);
    const cancels = {
      cancels: { chance: 1, after: { kind: 'constant', value: 1 }, onlyBeforeStart: false },
      revises: null,
    } as const;
    const withdrawn = waiting(2, {
      demand: [{ ...dated('lever', [at('mon', '10:00')]), changes: cancels }],
      deadlines: [days(1)],
    });
    expect(play(withdrawn).jobClasses[0]).toMatchObject({ arrived: 1, cancelled: 1 });
    expect(endedBy(withdrawn)).toEqual([0]);
  });

  it('change nothing else in the record, and nothing at all where there are none', () => {
    const testLab = waiting(30, { demand: [dated('lever', [at('mon', '10:00')])] });
    const without = play(testLab);
    expect(without.jobClasses[0]).not.toHaveProperty('endedBy');
    const withOne = play({ ...testLab, deadlines: [days(1)] });
    const stripped = withOne.jobClasses.map(({ endedBy: _, ...rest }) => rest);
    expect(hashHistory({ ...withOne, jobClasses: stripped })).toBe(hashHistory(without));
  });
});
