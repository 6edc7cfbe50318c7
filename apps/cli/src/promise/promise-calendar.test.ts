import type { PromiseAnswer } from '@buildweek/results';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { promiseCalendar } from './promise-calendar.ts';
import { promiseCsv } from './promise-csv.ts';

const moment = (at: string) => ({ at, hours: 0 });

const ANSWER: PromiseAnswer = {
  format: 'buildweek promise',
  version: 1,
  program: { name: 'buildweek', version: '0' },
  scenario: { name: 'lab', text: '', hash: '' },
  now: '2027-03-27 09:30',
  jobsInLab: 1,
  closed: [],
  run: { seed: 's', replications: 199, lastWeeks: 4, level: 0.95 },
  request: null,
  openJobs: [
    {
      job: 'job 1',
      demand: 'ring',
      part: '=cmd(); "ring", \\ größer\nBEGIN:VEVENT and a name that is long enough to be folded',
      quantity: 3,
      rush: true,
      stage: 'build',
      machine: null,
      arrived: '2027-03-26 10:00',
      due: moment('2027-03-29 16:00'),
      onTime: { kind: 'estimate', value: 0.5, low: 0.4, high: 0.6, level: 0.95, replications: 199 },
      meanReady: null,
      // The clock goes forward in the night to Sunday 28 March.
      dates: [{ probability: 0.8, ready: moment('2027-03-29 15:10'), promise: null, refused: null }],
      risk: [],
      moved: [],
    },
  ],
  day: {
    closes: moment('2027-03-27 16:00'),
    opens: moment('2027-03-29 08:00'),
    starts: [
      {
        machine: 'resin 2',
        jobs: [{ job: 'job 1', part: 'ring', pieces: 3 }],
        start: moment('2027-03-27 10:00'),
        startBy: moment('2027-03-27 11:30'),
        by: ['technicians 1'],
        share: 0.91,
        shareOnMachine: 0.5,
      },
    ],
    overnight: [],
  },
  since: null,
  pinned: null,
  verdict: [],
  assumptions: [],
  cautions: [],
  warnings: [],
};

function eventsOf(text: string) {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
}

describe('Promised dates as a calendar', () => {
  const text = promiseCalendar(ANSWER, 'Europe/Lisbon');

  it('can be read again, with dates in universal time by the zone of the lab', () => {
    const [ready, start] = eventsOf(text);
    // 15:10 in summer time, 10:00 to 11:30 before it.
    expect(ready?.getFirstPropertyValue('dtstart')?.toString()).toBe('2027-03-29T14:10:00Z');
    expect(start?.getFirstPropertyValue('dtstart')?.toString()).toBe('2027-03-27T10:00:00Z');
    expect(start?.getFirstPropertyValue('dtend')?.toString()).toBe('2027-03-27T11:30:00Z');
    expect(start?.getFirstPropertyValue('summary')).toBe('Start resin 2: job 1 (3 × ring)');
  });

  it('says names as they are, and lets none of them begin an entry', () => {
    const events = eventsOf(text);
    expect(events).toHaveLength(2);
    expect(events[0]?.getFirstPropertyValue('summary')).toBe(
      'Ready: job 1, 3 × =cmd(); "ring", \\ größer BEGIN:VEVENT and a name that is long enough to be folded',
    );
  });

  it('has lines of at most 75 octets that end with CR LF', () => {
    const lines = text.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  it('is the same for the same answer, and its entries keep their names when dates move', () => {
    expect(promiseCalendar(ANSWER, 'Europe/Lisbon')).toBe(text);
    const uids = (of: string) => eventsOf(of).map((event) => event.getFirstPropertyValue('uid'));
    const [job] = ANSWER.openJobs ?? [];
    const moved: PromiseAnswer = {
      ...ANSWER,
      now: '2027-03-27 12:00',
      openJobs:
        job === undefined
          ? []
          : [
              {
                ...job,
                dates: [
                  { probability: 0.8, ready: moment('2027-03-30 09:00'), promise: null, refused: null },
                ],
              },
            ],
    };
    expect(uids(promiseCalendar(moved, 'Europe/Lisbon'))[0]).toBe(uids(text)[0]);
    expect(new Set(uids(text)).size).toBe(2);
    // Numbers of jobs are others on the next day; of two that are alike each has an entry.
    const renumbered =
      job === undefined
        ? []
        : [
            { ...job, job: 'job 7' },
            { ...job, job: 'job 8' },
          ];
    const next = uids(promiseCalendar({ ...ANSWER, openJobs: renumbered }, 'Europe/Lisbon'));
    expect(next[0]).toBe(uids(text)[0]);
    expect(new Set(next).size).toBe(3);
  });

  it('leaves times as the wall clock shows them where the lab has no zone', () => {
    const [ready] = eventsOf(promiseCalendar(ANSWER, null));
    expect(ready?.getFirstPropertyValue('dtstart')?.toString()).toBe('2027-03-29T15:10:00');
  });
});

describe('Promised dates as a table', () => {
  it('hold no cell that a spreadsheet would run', () => {
    const csv = promiseCsv(ANSWER);
    expect(csv).toContain(`"'=cmd(); ""ring"", \\ größer\nBEGIN:VEVENT`);
    expect(csv).toContain('resin 2,job 1: 3 × ring,2027-03-27 10:00,2027-03-27 11:30,technicians 1,0.91\r\n');
  });
});
