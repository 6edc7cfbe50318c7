import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { maximumWait, rejectWording } from './rejects.ts';

describe('rejects', () => {
  it('are a share of the parts, or the usual one, and perhaps the stage where replacements start', () => {
    expect(rejectWording('4 % back to build')).toEqual({ share: 0.04, backTo: 'build' });
    expect(rejectWording('4 % of parts back to remove supports')).toEqual({
      share: 0.04,
      backTo: 'remove supports',
    });
    expect(rejectWording('2.5 %')).toEqual({ share: 0.025, backTo: null });
    expect(rejectWording('usual back to build')).toEqual({ share: 'usual', backTo: 'build' });
    expect(rejectWording('none')).toBeNull();
    expect(rejectWording('0 %')).toBeNull();
  });

  it.each([
    ['100 % back to build', 'No part would ever pass.', '50 % back to build'],
    ['4 back to build', 'needs a %', '4 % back to build'],
    ['some back to build', 'is not a number', '4 % back to build'],
  ])('refuse "%s" and say what to write', (text, message, write) => {
    const error = refusal(rejectWording, text);
    expect(error.message).toContain(message);
    expect(error.write).toBe(write);
  });
});

describe('a longest wait', () => {
  it('is a time, and the stage that it counts from when it is named', () => {
    expect(maximumWait('2 h after wash')).toEqual({ hours: 2, after: 'wash' });
    expect(maximumWait('90 min')).toEqual({ hours: 1.5, after: null });
  });

  it.each([
    ['2 after wash', '2 min after wash'],
    ['0 h after wash', '2 h after wash'],
    ['uniform 1 to 2 h after wash', '2 h after wash'],
  ])('refuses "%s" and says what to write', (text, write) => {
    expect(refusal(maximumWait, text).write).toBe(write);
  });
});
