import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { promise } from './promise.ts';

describe('a promise', () => {
  it('counts working days or the clock', () => {
    expect(promise('3 working days')).toEqual({ kind: 'working days', days: 3 });
    expect(promise('1 working day')).toEqual({ kind: 'working days', days: 1 });
    expect(promise('2 days')).toEqual({ kind: 'clock', hours: 48 });
    expect(promise('none')).toEqual({ kind: 'none' });
  });

  it.each([
    ['3', '"3" does not say of what.', '3 working days'],
    ['2.5 working days', '"2.5" is not a whole number of days.', '3 working days'],
    ['2 to 4 days, usually 3', 'A promise is one time above zero.', '3 working days'],
  ])('refuses "%s"', (text, message, write) => {
    expect(refusal(promise, text)).toMatchObject({ message, write });
  });
});
