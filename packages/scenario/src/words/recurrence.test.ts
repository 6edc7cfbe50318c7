import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { recurrence } from './recurrence.ts';

describe('what comes again', () => {
  it('"about" is exponential with this mean, a time alone is constant, any distribution may be named', () => {
    expect(recurrence('about 250 h of running')).toEqual({
      by: 'running hours',
      distribution: { kind: 'exponential', mean: 250 },
    });
    expect(recurrence('4 weeks by the clock')).toEqual({
      by: 'clock',
      distribution: { kind: 'constant', value: 672 },
    });
    expect(recurrence('weibull shape 1, mean 400 h of running')).toEqual({
      by: 'running hours',
      distribution: { kind: 'weibull', shape: 1, scale: expect.closeTo(400, 9) },
    });
    expect(recurrence('100 to 400 h of running, usually 200').distribution).toEqual({
      kind: 'pert',
      low: 100,
      mode: 200,
      high: 400,
    });
  });

  it('may begin with "every" or "about every"', () => {
    expect(recurrence('every 200 h of running')).toEqual(recurrence('200 h of running'));
    expect(recurrence('about every 200 h of running')).toEqual(recurrence('about 200 h of running'));
  });

  it.each([
    ['300 h', 'does not say whether only running counts', '300 h of running'],
    ['about 4 weeks', 'does not say whether only running counts', 'about 4 weeks by the clock'],
    ['about 300 of running', 'has no unit', 'about 300 h of running'],
    ['0 h of running', 'they never end', 'about 250 h of running'],
    ['about exponential mean 3 h of running', 'more than that', 'exponential mean 3 h of running'],
    ['about 3 dys by the clock', 'is not a unit', 'about 3 days by the clock'],
    ['now and then', '', 'about 250 h of running'],
  ])('refuses "%s" and says what to write', (text, message, write) => {
    const error = refusal(recurrence, text);
    expect(error.message).toContain(message);
    if (message === '') return;
    expect(error.write).toBe(write);
    expect(() => recurrence(error.write)).not.toThrow();
  });
});
