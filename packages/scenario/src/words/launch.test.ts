import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { launchRule, stationStart } from './launch.ts';

const nothing = {
  fullShare: null,
  waitedHours: null,
  beforeClosing: false,
  fixedHours: null,
  promiseAtRisk: false,
  preferAttendedEnd: false,
};

describe('a launch rule', () => {
  it('is one condition or several with "or" between them', () => {
    expect(launchRule('at once')).toEqual({ ...nothing, fullShare: 0 });
    expect(launchRule('when full')).toEqual({ ...nothing, fullShare: 1 });
    expect(launchRule('when 60 % full or after 4 h or before closing')).toEqual({
      ...nothing,
      fullShare: 0.6,
      waitedHours: 4,
      beforeClosing: true,
    });
    expect(launchRule('when a promise is at risk or after 1 day')).toEqual({
      ...nothing,
      waitedHours: 24,
      promiseAtRisk: true,
    });
    expect(launchRule('before closing preferring an attended end')).toEqual({
      ...nothing,
      beforeClosing: true,
      preferAttendedEnd: true,
    });
  });

  it('can name times of the week', () => {
    expect(launchRule('mon-wed at 15:00').fixedHours).toEqual([15, 39, 63]);
    expect(launchRule('mon and thu at 09:00 and 14:30').fixedHours).toEqual([9, 14.5, 81, 86.5]);
  });

  it.each([
    ['when 120 % full or after 4 h', '120 % is more than there can be.', 'when 100 % full or after 4 h'],
    ['when 60 full', '"60" has no % behind it.', 'when 60 % full'],
    ['when full or after 4', '"4" has no unit.', 'when full or after 4 min'],
    ['mon at 15', '"15" is not a time of day.', 'mon at 15:00'],
    ['mom at 15:00', '"mom" is not a day of the week.', 'mon at 15:00'],
    [
      'after 4 h or after 5 h',
      '"after 5 h" comes after a condition of the same kind.',
      'when 60 % full or after 4 h or before closing',
    ],
    ['sometimes', '"sometimes" is not understood here.', 'when 60 % full or after 4 h or before closing'],
  ])('refuses "%s"', (text, message, write) => {
    expect(refusal(launchRule, text)).toMatchObject({ message, write });
  });
});

describe('the start of a station', () => {
  it('looks at what is waiting', () => {
    expect(stationStart('at once')).toEqual({ fullShare: 0, waitedHours: null });
    expect(stationStart('when 50 % full or after 1 h')).toEqual({ fullShare: 0.5, waitedHours: 1 });
    expect(stationStart('after 1 h')).toEqual({ fullShare: 1, waitedHours: 1 });
    expect(refusal(stationStart, 'before closing').write).toBe('when 50 % full or after 1 h');
  });
});
