import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { changeOfMind, shareOfJobs } from './change-of-mind.ts';

describe('requesters who change their minds', () => {
  it('do so for a share of jobs, some time after the arrival, perhaps only before it is started', () => {
    expect(changeOfMind('3 % after 2 to 72 h, usually 24')).toEqual({
      chance: 0.03,
      after: { kind: 'pert', low: 2, mode: 24, high: 72 },
      onlyBeforeStart: false,
    });
    expect(changeOfMind('5 % of jobs after 24 h, only before start')).toEqual({
      chance: 0.05,
      after: { kind: 'constant', value: 24 },
      onlyBeforeStart: true,
    });
    expect(changeOfMind('never')).toBeNull();
    expect(changeOfMind('0 % after 1 h')).toBeNull();
  });

  it.each([
    ['3 %', 'how long after the arrival', '3 % after 2 to 72 h, usually 24'],
    ['sometimes', 'how long after the arrival', '3 % after 2 to 72 h, usually 24'],
    ['103 % after 2 h', 'more than there can be', '100 % of jobs after 2 h'],
    ['3 after 2 h', 'needs a %', '3 % after 2 h'],
    ['3 % after 2', 'has no unit', '3 % after 2 min'],
  ])('are refused for "%s", with what to write', (text, message, write) => {
    const error = refusal(changeOfMind, text);
    expect(error.message).toContain(message);
    expect(error.write).toBe(write);
    expect(() => changeOfMind(error.write)).not.toThrow();
  });

  it('may be asked for every job', () => {
    expect(shareOfJobs('100 % of jobs')).toBe(1);
    expect(refusal(shareOfJobs, '20 % of parts').write).toBe('15 % of jobs');
  });
});
