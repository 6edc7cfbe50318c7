import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { absence } from './absence.ts';
import { fitsPerBuild, machineCapacity, spaceOfBuild, stationCapacity } from './capacity.ts';
import { changeOfMind, shareOfJobs } from './change-of-mind.ts';
import { yesNo } from './choice.ts';
import { clockTime, date, dateSpan, dateTime } from './dates.ts';
import { basedDuration, plainDuration } from './duration.ts';
import { failureChance } from './failure-chance.ts';
import { keptJobs } from './kept-jobs.ts';
import { launchRule, stationStart } from './launch.ts';
import { said } from './mended.ts';
import { noticing } from './noticing.ts';
import { count, growthPerMonth, perWeek, share, wholeNumber } from './numbers.ts';
import { printTime } from './print-time.ts';
import { promise } from './promise.ts';
import { recurrence } from './recurrence.ts';
import { maximumWait, rejectWording } from './rejects.ts';
import { target } from './target.ts';
import { unattendedSpans } from './unattended-hours.ts';
import { weekdays, windows } from './week.ts';
import type { Wording } from './wording-error.ts';

/** What is proposed for a text. */
function proposal(wording: Wording<unknown>, text: string): string {
  return refusal((written) => said(written, wording), text).write;
}

const rush = share(100);
const work = basedDuration(['job', 'part', 'build']);

/** Each text says the same as the other; only the first is of this format. */
const SAME: readonly [wording: Wording<unknown>, same: string, text: string][] = [
  [launchRule, 'fri at 15:00', 'fri at 3pm'],
  [launchRule, 'fri at 15:00 or after 4 h', 'fri at 3 p.m. or after 4 h'],
  [launchRule, 'mon-thu at 13:30', 'mon to thu at 1:30 pm'],
  [stationStart, 'when 50 % full or after 1.5 h', 'when 50 % full or after 1h30'],
  [count, '1 to 4', '1-4'],
  [count, '1 to 4', '1 – 4'],
  [count, '1 to 4', 'between 1 and 4'],
  [count, '1 to 4', '1..4 parts'],
  [count, '4', '4 pieces'],
  [perWeek, '5 per week', '5 / week'],
  [perWeek, '5 per week', '5/wk'],
  [perWeek, '5 per week', '5 a week'],
  [perWeek, '2 per day', '2 per d'],
  [promise, '3 working days', '3 wd'],
  [promise, '3 working days', '3 business days'],
  [promise, '1 working day', '1 workday'],
  [dateSpan, '2027-04-19 to 2027-04-23', '2027-04-19 - 2027-04-23'],
  [dateSpan, '2027-04-19 to 2027-04-23', '19.4.2027 – 23.4.2027'],
  [dateSpan, '2027-04-19 to 2027-04-23', '2027/4/19 until 2027/4/23'],
  [printTime, '6.5 h per build', '6h30 per build'],
  [printTime, '6.5 h per build', '6:30 per build'],
  [printTime, '6 h 20 min per build', '6h20 per build'],
  [printTime, '2 h per build plus 5 min per part', '2 h / build plus 5 mins per piece'],
  [work, '5 min per part', '5 min / part'],
  [work, '1.5 h per job', '1,5 hrs per job'],
  [windows, '08:00-12:00', '8am-12:00'],
  [windows, '08:00-12:00 13:00-17:00', '8am-12pm 1pm-5pm'],
  [windows, '08:00-17:00', '8am-5'],
  [windows, '09:00-17:00', '9-5'],
  [windows, '22:00-6:00', '22-6'],
  [windows, '08:00-16:30', '08:00 to 16:30'],
  [windows, '7:30-16:00', '7.30-16.00'],
  [weekdays, 'mon-fri', 'mon to fri'],
  [unattendedSpans, 'mon-thu 16:00-07:00', 'mon-thu 4pm-7am'],
  [dateTime, '2027-03-01 09:00', '1.3.2027 9am'],
  [clockTime, '14:00', '2 pm'],
  [rush, '10 %', '0.1'],
  [rush, '15 %', '15'],
  [rejectWording, '4 % back to build', '0.04 back to build'],
  [shareOfJobs, '15 %', '0.15'],
  [changeOfMind, '3 % after 24 h', '0.03 after 24 h'],
  [wholeNumber(1, '2'), '3', '3 machines'],
  [plainDuration, '3 days', 'three days'],
  [plainDuration, '2 weeks', 'a fortnight'],
  [
    target({ code: 'EUR', line: 1 }),
    '90% of jobs within 3 working days',
    '90% of jobs within three working days',
  ],
  [yesNo, 'yes', 'y'],
  [yesNo, 'no', 'off'],
];

/** What is proposed does not say what was written, and says so. */
const EXAMPLES: readonly [wording: Wording<unknown>, text: string, write: string][] = [
  [clockTime, '25:00', 'for example: 14:00'],
  [rush, '130 %', 'for example: 100 %'],
  [rush, '1', 'for example: 100 %'],
  [count, '0', 'for example: 1 to 12'],
  [wholeNumber(1, '2'), 'two', 'for example: 2'],
  [wholeNumber(1, '2'), '2.5', 'for example: 3'],
  [date, '2027-02-30', 'for example: 2027-02-28'],
  [date, 'tomorrow', 'for example: 2027-03-01'],
  [yesNo, 'maybe', 'for example: no'],
  [plainDuration, 'soon', 'for example: 10 to 45 min, usually 20'],
];

describe('what is proposed for a text that is refused', () => {
  it.each(SAME.map(([wording, same, text]) => ({ wording, same, text })))(
    'says the same where that can be kept: "$same" for "$text"',
    ({ wording, same, text }) => {
      expect(proposal(wording, text)).toBe(same);
    },
  );

  it.each(EXAMPLES.map(([wording, text, write]) => ({ wording, text, write })))(
    'is called an example where it does not: "$write" for "$text"',
    ({ wording, text, write }) => {
      expect(proposal(wording, text)).toBe(write);
    },
  );

  it('is accepted when it is written', () => {
    const wordings = [
      ...SAME.map(([wording]) => wording),
      ...[absence, failureChance, fitsPerBuild, growthPerMonth, keptJobs, machineCapacity, maximumWait],
      ...[noticing, recurrence, spaceOfBuild, stationCapacity],
    ];
    const pieces = fc.constantFrom(
      ...[
        '1',
        '2',
        '12',
        '0.1',
        '1,5',
        '.5',
        '8am',
        '3pm',
        '6h30',
        '6:30',
        '09:00',
        '2027-04-19',
        '19.4.2027',
      ],
      ...[
        '-',
        '–',
        '/',
        'to',
        'per',
        'a',
        'of',
        'or',
        'at',
        'after',
        'usually',
        'plus',
        'back to build',
        'when',
      ],
      ...[
        'h',
        'min',
        'mins',
        'm',
        '%',
        'wd',
        'working days',
        'week',
        'part',
        'build',
        'jobs',
        'mon',
        'fri',
        'full',
      ],
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...wordings),
        fc.array(pieces, { minLength: 1, maxLength: 5 }).map((words) => words.join(' ')),
        (wording, text) => {
          try {
            said(text, wording);
          } catch {
            const write = proposal(wording, text).replace(/^for example: /, '');
            expect(() => wording(write)).not.toThrow();
          }
        },
      ),
      { numRuns: 3000, seed: 16 },
    );
  });
});
