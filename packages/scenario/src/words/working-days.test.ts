import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';
import { refusal } from '../fixture/refusal.ts';
import { basedDuration, plainDuration } from './duration.ts';
import { said } from './mended.ts';
import { promise } from './promise.ts';

const DRY = '- dry: { wait: 30 min }';

describe('working days in the place of a time', () => {
  it.each([
    ['1 to 3 working days', 'for example: 8 to 24 h, usually 16'],
    ['1 to 3 working days, usually 2', 'for example: 8 to 24 h, usually 16'],
    ['1.5 business days', 'for example: 12 h'],
    ['2 wd', 'for example: 16 h'],
    ['1 workday', 'for example: 8 h'],
  ])('are answered with hours of work: "%s"', (text, write) => {
    expect(refusal((written) => said(written, plainDuration), text)).toMatchObject({
      message: 'Working days are for promises; a time here is told in hours.',
      write,
    });
  });

  it('keep what the time counts for', () => {
    const perPart = basedDuration(['job', 'part']);
    expect(refusal((written) => said(written, perPart), '1 working day per job').write).toBe(
      'for example: 8 h per job',
    );
  });

  it('are answered with hours of the clock at an answer, where they would be right but are not there', () => {
    const text = edited(DRY, '- ask: { ask requester: 20 %, takes: 1 to 3 working days }');
    expect(problemsOf(text)).toMatchObject([
      {
        severity: 'error',
        line: 17,
        message:
          'An answer in working days would be right, but this program only knows answers by the clock, day and night.',
        write: 'for example: 24 to 72 h, usually 48',
      },
    ]);
  });

  it('are answered with hours of the clock at a wait', () => {
    expect(problemsOf(edited(DRY, '- dry: { wait: 2 working days }'))).toMatchObject([
      { message: 'A wait goes on day and night; it has no working days.', write: 'for example: 48 h' },
    ]);
  });

  it('of a promise are a whole number, and no range', () => {
    expect(refusal((written) => said(written, promise), '1 to 3 working days')).toMatchObject({
      message: '"1 to 3" is not a whole number of days.',
      write: 'for example: 3 working days',
    });
  });
});
