import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { noticing } from './noticing.ts';

describe('how people notice that a machine has stopped', () => {
  it('is by somebody who is in, on arrival, on rounds, or at any time', () => {
    expect(noticing('when somebody is in')).toEqual({ kind: 'when somebody is in' });
    expect(noticing('on arrival')).toEqual({ kind: 'on arrival' });
    expect(noticing('On rounds every 90 min')).toEqual({ kind: 'rounds', everyHours: 1.5 });
    expect(noticing('monitored')).toEqual({ kind: 'monitored' });
  });

  it.each([
    ['rounds', 'on rounds every 2 h'],
    ['on rounds every 0 h', 'on rounds every 2 h'],
    ['on rounds every uniform 1 to 2 h', 'on rounds every 2 h'],
    ['on rounds every 2', 'on rounds every 2 min'],
    ['by chance', 'when somebody is in'],
  ])('refuses "%s" and says what to write', (text, write) => {
    const error = refusal(noticing, text);
    expect(error.write).toBe(write);
    expect(() => noticing(error.write)).not.toThrow();
  });
});
