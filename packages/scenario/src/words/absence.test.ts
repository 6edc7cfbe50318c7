import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { absence } from './absence.ts';

describe('absence by chance', () => {
  it('is a share of days, single ones unless it says how many at a time', () => {
    expect(absence('3 % of days')).toEqual({ share: 0.03, days: { kind: 'fixed', value: 1 } });
    expect(absence('3 % of days, 1 to 5 days at a time')).toEqual({
      share: 0.03,
      days: { kind: 'uniform', low: 1, high: 5 },
    });
    expect(absence('4 % of days, 2 days at a time')?.days).toEqual({ kind: 'fixed', value: 2 });
    expect(absence('4 % of days, geometric mean 3 days at a time')?.days).toEqual({
      kind: 'geometric',
      mean: 3,
    });
    expect(absence('never')).toBeNull();
    expect(absence('0 % of days')).toBeNull();
  });

  it.each([
    ['3 %', 'does not say of what', '3 % of days'],
    ['100 % of days', 'never there', '50 % of days'],
    ['3 % of days, 5 to 1 days at a time', 'above the high end', '3 % of days, 1 to 5 days at a time'],
    ['3 of days', 'needs a %', '3 % of days, 1 to 5 days at a time'],
    ['3 % of days, mostly on Mondays', 'not understood', '3 % of days, 1 to 5 days at a time'],
  ])('refuses "%s" and says what to write', (text, message, write) => {
    const error = refusal(absence, text);
    expect(error.message).toContain(message);
    expect(error.write).toBe(write);
  });
});
