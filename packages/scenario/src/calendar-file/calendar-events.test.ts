import { describe, expect, it } from 'vitest';
import { CalendarFileError, calendarEvents } from './calendar-events.ts';

const FAR = Date.UTC(2030, 0, 1);

function calendar(...lines: readonly string[]): string {
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//example//tests//EN',
    ...lines,
    'END:VCALENDAR',
    '',
  ].join('\r\n');
}

function event(...lines: readonly string[]): string {
  return ['BEGIN:VEVENT', 'UID:one', ...lines, 'END:VEVENT'].join('\r\n');
}

/** Dates of the occurrences, `09-02` or with the year. */
function dates(rule: string, start: string, count: number, withYear = false): string[] {
  const text = calendar(event(`DTSTART;TZID=America/New_York:${start}`, 'DURATION:PT1H', `RRULE:${rule}`));
  return calendarEvents(text, 'America/New_York', 0, FAR)
    .slice(0, count)
    .map((one) => new Date(one.start).toISOString().slice(withYear ? 0 : 5, 10));
}

describe('calendarEvents', () => {
  // Source: RFC 5545, sections 3.3.10 and 3.8.5.3; the list of Mondays, Wednesdays and Fridays starts on 1 September by its erratum.
  it.each([
    [
      'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH',
      '19970902T090000',
      '09-02 09-04 09-09 09-11 09-16 09-18 09-23 09-25 09-30 10-02',
    ],
    [
      'FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR',
      '19970901T090000',
      '09-01 09-03 09-05 09-15 09-17 09-19 09-29 10-01 10-03 10-13 10-15 10-17 10-27 10-29 10-31 11-10 11-12 11-14 11-24 11-26 11-28 12-08 12-10 12-12 12-22',
    ],
    ['FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO', '19970805T090000', '08-05 08-10 08-19 08-24'],
    ['FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU', '19970805T090000', '08-05 08-17 08-19 08-31'],
    ['FREQ=DAILY;INTERVAL=10;COUNT=5', '19970902T090000', '09-02 09-12 09-22 10-02 10-12'],
  ])('unrolls %s', (rule, start, expected) => {
    const wanted = expected.split(' ');
    expect(dates(rule, start, 100)).toEqual(wanted);
  });

  it('unrolls rules by the month', () => {
    expect(dates('FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2', '19970929T090000', 7, true)).toEqual(
      '1997-09-29 1997-10-30 1997-11-27 1997-12-30 1998-01-29 1998-02-26 1998-03-30'.split(' '),
    );
    expect(dates('FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5', '20070115T090000', 9, true)).toEqual(
      '2007-01-15 2007-01-30 2007-02-15 2007-03-15 2007-03-30'.split(' '),
    );
  });

  it('leaves out exceptions and cancelled occurrences, takes additions and moved ones', () => {
    const text = calendar(
      event(
        'SUMMARY:Early',
        'DTSTART:20270301T060000',
        'DTEND:20270301T140000',
        'RRULE:FREQ=DAILY;COUNT=4',
        'EXDATE:20270302T060000',
        'RDATE:20270310T060000',
      ),
      event(
        'SUMMARY:Early, moved',
        'RECURRENCE-ID:20270303T060000',
        'DTSTART:20270303T100000',
        'DTEND:20270303T180000',
      ),
      event('RECURRENCE-ID:20270304T060000', 'DTSTART:20270304T060000', 'STATUS:CANCELLED'),
    );
    const found = calendarEvents(text, null, 0, FAR);
    expect(
      found.map(({ start, end }) => [new Date(start).toISOString().slice(5, 16), (end - start) / 3_600_000]),
    ).toEqual([
      ['03-01T06:00', 8],
      ['03-03T10:00', 8],
      ['03-10T06:00', 8],
    ]);
  });

  it('keeps two series apart that begin alike', () => {
    const series = (uid: string, ...more: readonly string[]): string =>
      ['BEGIN:VEVENT', `UID:${uid}`, `SUMMARY:${uid}`, ...more, 'END:VEVENT'].join('\r\n');
    const rule = ['DTSTART:20270301T060000', 'DTEND:20270301T140000', 'RRULE:FREQ=DAILY;COUNT=2'];
    const text = calendar(
      series('A', ...rule),
      series('B', ...rule),
      series('B', 'RECURRENCE-ID:20270302T060000', 'DTSTART:20270302T060000', 'STATUS:CANCELLED'),
      series('lost', 'RECURRENCE-ID:20270303T060000', 'DTSTART:20270303T060000', 'DTEND:20270303T070000'),
    );
    expect(calendarEvents(text, null, 0, FAR).map(({ name }) => name)).toEqual(['A', 'B', 'A', 'lost']);
  });

  it('tells times of other zones by the clock of the lab, and leaves those without a zone as they are', () => {
    const at = (line: string): string => {
      const [found] = calendarEvents(calendar(event(line, 'DURATION:PT1H')), 'Europe/Berlin', 0, FAR);
      return found === undefined ? '' : new Date(found.start).toISOString().slice(0, 16);
    };
    expect(at('DTSTART:20270701T060000Z')).toBe('2027-07-01T08:00');
    expect(at('DTSTART:20270101T060000Z')).toBe('2027-01-01T07:00');
    expect(at('DTSTART;TZID=America/New_York:20270701T060000')).toBe('2027-07-01T12:00');
    expect(at('DTSTART;TZID=Europe/Berlin:20270701T060000')).toBe('2027-07-01T06:00');
    expect(at('DTSTART:20270701T060000')).toBe('2027-07-01T06:00');
  });

  it('knows whole days', () => {
    const text = calendar(
      event('SUMMARY:Closed', 'DTSTART;VALUE=DATE:20271224', 'DTEND;VALUE=DATE:20271227'),
    );
    const [found] = calendarEvents(text, 'Europe/Berlin', 0, FAR);
    expect(found).toMatchObject({
      isWholeDay: true,
      start: Date.UTC(2027, 11, 24),
      end: Date.UTC(2027, 11, 27),
    });
  });

  it('refuses what is no calendar', () => {
    for (const text of ['', 'hello', 'BEGIN:VCARD\r\nEND:VCARD\r\n', 'BEGIN:VCALENDAR\r\nnonsense\r\n']) {
      expect(() => calendarEvents(text, null, 0, FAR)).toThrow(CalendarFileError);
    }
  });
});
