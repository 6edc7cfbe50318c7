import { describe, expect, it } from 'vitest';
import { readScenario } from './read-scenario.ts';

/** Two crews that change between early and late week by week. Source: RFC 5545, semantics of INTERVAL=2. */
const SHIFTS = [
  'BEGIN:VCALENDAR',
  'VERSION:2.0',
  'PRODID:-//example//tests//EN',
  ...[
    ['Crew A early', '20250106T060000', '20250106T140000'],
    ['Crew A late', '20250113T140000', '20250113T220000'],
  ].flatMap(([name, start, end], index) => [
    'BEGIN:VEVENT',
    `UID:${index}`,
    `SUMMARY:${name}`,
    `DTSTART:${start}`,
    `DTEND:${end}`,
    'RRULE:FREQ=WEEKLY;INTERVAL=2;BYDAY=MO,TU,WE,TH,FR',
    'END:VEVENT',
  ]),
  'BEGIN:VEVENT',
  'UID:closed',
  'SUMMARY:Holidays',
  'DTSTART;VALUE=DATE:20250120',
  'DTEND;VALUE=DATE:20250122',
  'END:VEVENT',
  'END:VCALENDAR',
  '',
].join('\r\n');

const SCENARIO = `buildweek: 1
name: crews
starts: 2025-01-06
zone: Europe/Berlin
simulate: { weeks: 3 }
hours:
  crew: from shifts.ics, events Crew A
  office: { mon-fri: 08:00-16:00 }
people: { technicians: { hours: crew, skills: hand work }, office: { hours: office, skills: files } }
routes: { r: [sand: { by: hand work, takes: 1 h per job }] }
parts: { ring: { route: r } }
demand: { ring: { jobs: 3 per week } }
`;

function read(text: string, files: Readonly<Record<string, string>> = { 'shifts.ics': SHIFTS }) {
  return readScenario(text, 'crews.yaml', (path) => files[path] ?? null);
}

function calendarOf(text: string, name: string) {
  const reading = read(text);
  if (reading.kind !== 'scenario') throw new Error(JSON.stringify(reading.problems));
  const found = reading.lab.calendars.find((calendar) => calendar.name === name);
  if (found === undefined) throw new Error(`There is no calendar ${name}.`);
  return found;
}

/** All windows of the first weeks, in order. */
function windowsOf(text: string, name: string, weeks: number) {
  const { weekly, closedDays, extra } = calendarOf(text, name);
  const usual = Array.from({ length: weeks }, (_, week) => week).flatMap((week) =>
    weekly
      .filter(({ fromHour }) => !closedDays.includes(week * 7 + Math.floor(fromHour / 24)))
      .map(({ fromHour, toHour }) => ({ fromHour: week * 168 + fromHour, toHour: week * 168 + toHour })),
  );
  return [...usual, ...extra.filter(({ fromHour }) => fromHour < weeks * 168)].sort(
    (a, b) => a.fromHour - b.fromHour,
  );
}

describe('Hours from a calendar file', () => {
  it('are an ordinary week where every week is alike, so that all that goes by the week goes by it', () => {
    const plain = SHIFTS.replaceAll(';INTERVAL=2', '');
    const reading = read(SCENARIO.replace('events Crew A', 'events Crew A early'), { 'shifts.ics': plain });
    if (reading.kind !== 'scenario') throw new Error(JSON.stringify(reading.problems));
    const crew = reading.lab.calendars.find(({ name }) => name === 'crew');
    expect(crew?.weekly).toEqual(
      [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 6, toHour: day * 24 + 14 })),
    );
    expect(crew?.extra).toEqual([]);
    expect(reading.lab.demand[0]?.arrivals).toMatchObject({ profile: [{ fromHour: 6 }, {}, {}, {}, {}] });
  });

  it('give way to closed days', () => {
    const text = SCENARIO.replace('hours:\n', 'hours:\n  closed: [2025-01-13, 2025-01-20]\n');
    const days = windowsOf(text, 'crew', 3).map(({ fromHour }) => Math.floor(fromHour / 24));
    // Monday of the second week (late, not as usual) and of the third (early, as usual).
    expect(days).toEqual([0, 1, 2, 3, 4, 8, 9, 10, 11, 15, 16, 17, 18]);
  });

  it('are the crew that changes between early and late, 160 hours in January', () => {
    const windows = windowsOf(SCENARIO, 'crew', 4);
    const dated = windows.map(({ fromHour, toHour }) => ({
      date: new Date(Date.UTC(2025, 0, 6) + fromHour * 3_600_000).toISOString().slice(0, 16),
      hours: toHour - fromHour,
    }));
    const january = dated.filter(({ date }) => date < '2025-02-01');
    expect(january.reduce((sum, { hours }) => sum + hours, 0)).toBe(160);
    expect(
      january
        .filter(({ date }) => date.endsWith('T06:00'))
        .map(({ date }) => date.slice(0, 10))
        .slice(0, 7),
    ).toEqual('2025-01-06 2025-01-07 2025-01-08 2025-01-09 2025-01-10 2025-01-20 2025-01-21'.split(' '));
    expect(
      january
        .filter(({ date }) => date.endsWith('T14:00'))
        .map(({ date }) => date.slice(0, 10))
        .slice(0, 6),
    ).toEqual('2025-01-13 2025-01-14 2025-01-15 2025-01-16 2025-01-17 2025-01-27'.split(' '));
  });

  it('are closed on the whole days of a file', () => {
    const text = SCENARIO.replace('office: { mon-fri', 'closed: [from shifts.ics]\n  office: { mon-fri');
    expect(calendarOf(text, 'office').closedDays).toEqual([14, 15]);
  });

  it.each([
    ['from none.ics, events Crew A', 'There is no file "none.ics" here.'],
    [
      'from shifts.ics, events Crew B',
      'shifts.ics holds no event with hours whose name begins with "Crew B"',
    ],
    ['from broken.ics', 'broken.ics is no calendar that can be read'],
  ])('say at their line what is wrong with %s', (wording, message) => {
    const reading = read(SCENARIO.replace('from shifts.ics, events Crew A', wording), {
      'shifts.ics': SHIFTS,
      'broken.ics': 'hello',
    });
    expect(reading.kind).toBe('problems');
    if (reading.kind === 'scenario') return;
    const problem = reading.problems.find((one) => one.message.includes(message));
    expect(problem).toMatchObject({ line: 7, severity: 'error' });
  });
});
