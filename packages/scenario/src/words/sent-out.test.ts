import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { outsideTime, sendOutConditions } from './sent-out.ts';

const NEVER = { always: false, waitingJobsAbove: null, promiseAtRisk: false };

describe('when jobs are sent out', () => {
  it.each([
    ['always', { ...NEVER, always: true }],
    ['more than 12 jobs wait', { ...NEVER, waitingJobsAbove: 12 }],
    ['when more than 1 job waits', { ...NEVER, waitingJobsAbove: 1 }],
    ['more than 0 jobs wait', { ...NEVER, waitingJobsAbove: 0 }],
    ['a promise is at risk', { ...NEVER, promiseAtRisk: true }],
    [
      'more than 12 jobs wait or promise at risk',
      { always: false, waitingJobsAbove: 12, promiseAtRisk: true },
    ],
    [
      'its promise is at risk or more than 3 jobs wait',
      { ...NEVER, waitingJobsAbove: 3, promiseAtRisk: true },
    ],
  ])('is told as "%s"', (text, conditions) => {
    expect(sendOutConditions(text)).toEqual(conditions);
  });

  it('may be never', () => {
    expect(sendOutConditions('never')).toBeNull();
  });

  it.each([
    ['sometimes', 'is not understood here', 'more than 12 jobs wait or a promise is at risk'],
    ['more than twelve jobs wait', 'is not a whole number from 0 up', 'more than 12 jobs wait'],
    ['more than 2.5 jobs wait', 'is not a whole number from 0 up', 'more than 3 jobs wait'],
    ['at least 12 jobs wait', 'is not understood here', 'more than 11 jobs wait'],
    [
      '5 jobs wait or a promise is at risk',
      'not understood',
      'more than 4 jobs wait or a promise is at risk',
    ],
    ['always or a promise is at risk', 'leaves nothing to other conditions', 'always'],
    [
      'more than 3 jobs wait or more than 5 jobs wait',
      'of the same kind',
      'more than 12 jobs wait or a promise is at risk',
    ],
  ])('is refused for "%s", with what to write', (text, message, write) => {
    const error = refusal(sendOutConditions, text);
    expect(error.message).toContain(message);
    expect(error.write).toBe(write);
    expect(() => sendOutConditions(error.write)).not.toThrow();
  });
});

describe('how long jobs are away', () => {
  it('is told in working days, or by the clock, like any time', () => {
    expect(outsideTime('6 working days')).toEqual({
      kind: 'working days',
      days: { kind: 'constant', value: 6 },
    });
    expect(outsideTime('1 working day')).toMatchObject({ days: { value: 1 } });
    expect(outsideTime('4 to 9 working days, usually 6')).toEqual({
      kind: 'working days',
      days: { kind: 'pert', low: 4, mode: 6, high: 9 },
    });
    expect(outsideTime('exponential mean 5 working days')).toMatchObject({
      kind: 'working days',
      days: { kind: 'exponential', mean: 5 },
    });
    expect(outsideTime('2 to 6 days, usually 4')).toMatchObject({
      kind: 'clock',
      duration: { distribution: { kind: 'pert', low: 48, mode: 96, high: 144 } },
    });
  });

  it.each([
    ['6', 'does not say of what', '6 working days'],
    ['4 to 9, usually 6', 'does not say of what', '4 to 9 working days, usually 6'],
    ['2.5 working days', 'whole number of working days', '3 working days'],
    ['0 working days', 'whole number of working days', '1 working day'],
    ['9 to 4 working days, usually 6', 'is above the high end', '4 working days to 9, usually 6'],
    ['4 to 9 working days', 'what is usual', '4 to 9 working days, usually 6.5'],
    ['3 h to 4 working days, usually 2', 'do not go together', '4 to 9 working days, usually 6'],
    ['0 h', 'after some time', '4 to 9 working days, usually 6'],
    ['soon', 'not understood', '4 to 9 working days, usually 6'],
  ])('is refused for "%s", with what to write', (text, message, write) => {
    const error = refusal(outsideTime, text);
    expect(error.message).toContain(message);
    expect(error.write).toBe(write);
    expect(() => outsideTime(error.write)).not.toThrow();
  });
});
