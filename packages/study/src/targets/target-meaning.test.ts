import type { TargetMeaning } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import type { ObservedTarget } from './observation.ts';
import { targetMeaning } from './target-meaning.ts';

const LONG_RUN: TargetMeaning = { kind: 'long run' };
const QUARTERS: TargetMeaning = { kind: 'chance of a period', chance: 0.9 };

function within(
  within: Extract<ObservedTarget, { kind: 'share within' }>['within'],
  more: Partial<Extract<ObservedTarget, { kind: 'share within' }>> = {},
): ObservedTarget {
  return {
    kind: 'share within',
    wording: '',
    jobs: { part: null, rush: null },
    share: 0.9,
    within,
    meaning: LONG_RUN,
    ...more,
  };
}

describe('the meaning of a target is told in one sentence:', () => {
  it('hours by the clock', () => {
    const target = within({ kind: 'clock', hours: 48 }, { jobs: { part: null, rush: true } });
    expect(targetMeaning(target, 13)).toBe(
      'Of all rush jobs in the long run, within 48 h by the clock from the complete file to the last good part; jobs that are never finished are late.',
    );
  });

  it('working days with their cut-off, for a period', () => {
    const days = { kind: 'working days', days: 2, cutOffHour: 14.5 } as const;
    const target = within(days, { jobs: { part: 'housing', rush: false }, meaning: QUARTERS });
    expect(targetMeaning(target, 13)).toBe(
      'Of the normal jobs of “housing” that come in one quarter, by closing time of the 2nd working day after the complete file (from 14:30 on a file counts for the next); jobs that are never finished are late; at least 90 % of all quarters have to meet it.',
    );
    expect(targetMeaning(target, 6)).toContain('come in one period of 6 weeks');
    expect(targetMeaning(target, 6)).toContain('at least 90 % of all periods of 6 weeks have to');
  });

  it.each([
    [0, 'of the day of the complete file'],
    [1, 'of the 1st working day after'],
    [3, 'of the 3rd working day after'],
    [11, 'of the 11th working day after'],
    [22, 'of the 22nd working day after'],
  ])('%d working days', (days, words) => {
    expect(targetMeaning(within({ kind: 'working days', days, cutOffHour: null }), 13)).toContain(words);
  });

  it('money', () => {
    const budget = { kind: 'budget', wording: '', atMost: 1 } as const;
    expect(targetMeaning({ ...budget, of: 'purchases' }, 13)).toContain(
      'beyond the machines and stations that are owned',
    );
    expect(targetMeaning({ ...budget, of: 'year' }, 13)).toContain('in a year whatever it does');
    expect(targetMeaning({ kind: 'cost per part', wording: '', atMost: 1 }, 13)).toContain(
      'for each finished part',
    );
  });

  it('promises, people and machines', () => {
    const onTime: ObservedTarget = {
      kind: 'on time',
      wording: '',
      jobs: { part: null, rush: null },
      share: 0.95,
      meaning: LONG_RUN,
    };
    expect(targetMeaning(onTime, 13)).toBe(
      'Of all jobs with a promise in the long run; jobs that are never finished are late.',
    );
    const busy = {
      kind: 'busy',
      wording: '',
      of: 'people',
      group: null,
      atMost: 0.8,
      meaning: LONG_RUN,
    } as const;
    expect(targetMeaning(busy, 13)).toBe(
      'Of the hours on duty of all people together in the long run: work and other duties, overtime left out.',
    );
    expect(targetMeaning({ ...busy, of: 'machines', group: 'resin', meaning: QUARTERS }, 13)).toBe(
      'Of all hours of the clock of “resin” in one quarter: at work, in maintenance, printing a test or broken down; not idle, waiting (to fill, to be started, to be unloaded) or off; at least 90 % of all quarters have to meet it.',
    );
  });
});
