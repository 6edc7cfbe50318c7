import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { failureChance } from './failure-chance.ts';

describe('the chance that builds fail', () => {
  it('is a share of builds, a share per print hour, or both', () => {
    expect(failureChance('5 % of builds')).toEqual({ chancePerBuild: 0.05, perPrintHour: 0 });
    expect(failureChance('0.2 % per print hour')).toEqual({ chancePerBuild: 0, perPrintHour: 0.002 });
    expect(failureChance('5 % of builds plus 0.2 % per print hour')).toEqual({
      chancePerBuild: 0.05,
      perPrintHour: 0.002,
    });
    expect(failureChance('never')).toEqual({ chancePerBuild: 0, perPrintHour: 0 });
  });

  it.each([
    ['100 % of builds', 'No build would ever come out.', '50 % of builds'],
    ['5 %', 'does not say of what', '5 % of builds'],
    ['0.05 of builds', 'needs a %', '5 % of builds'],
    ['5 % of parts', '"builds" is missing', '5 % of builds'],
    ['1 % of builds plus 2 % of builds', 'is there twice', '5 % of builds'],
    ['often', 'is not a number', '5 % of builds'],
  ])('refuses "%s" and says what to write', (text, message, write) => {
    const error = refusal(failureChance, text);
    expect(error.message).toContain(message);
    expect(error.write).toBe(write);
    expect(() => failureChance(error.write)).not.toThrow();
  });
});
