import { describe, expect, it } from 'vitest';
import { PLAIN_LAB, problemsOf } from '../fixture/plain-lab.ts';
import { readScenario } from '../read-scenario.ts';
import type { ScenarioStaff } from '../scenario.ts';

function staffOf(text: string): ScenarioStaff {
  const reading = readScenario(PLAIN_LAB + text, 'lab.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
  return reading.scenario.staff;
}

function refusals(text: string): unknown[] {
  return problemsOf(PLAIN_LAB + text).map(({ line, column, message, write }) => [
    line - PLAIN_LAB.split('\n').length + 1,
    column,
    message,
    write,
  ]);
}

describe('ways of staffing in a scenario', () => {
  it('are changes in its own words: a group, a list, or lines', () => {
    const { options } = staffOf(`staff:
  options:
    three: { technicians / count: 3 }
    late and three: [technicians / count: 3, "technicians / hours: { mon-fri: 10:00-18:00 }"]
    help:
      - people / help: { hours: { sat: 08:00-12:00 }, skills: [run machines, hand work] }
`);
    expect(options.map(({ name, changes }) => [name, changes.map(({ wording }) => wording)])).toEqual([
      ['three', ['technicians / count: 3']],
      ['late and three', ['technicians / count: 3', 'technicians / hours: { mon-fri: 10:00-18:00 }']],
      ['help', ['people / help: { hours: { sat: 08:00-12:00 }, skills: [run machines, hand work] }']],
    ]);
    expect(options[0]?.changes[0]).toMatchObject({ path: ['technicians', 'count'], value: '3' });
  });

  it('are refused where they stand when a place is a slip', () => {
    expect(
      refusals(`staff:
  options:
    late: { technisians / hours: late }
    today: { technicians / count: 3 }
    more: [technicians count 3]
`),
    ).toEqual([
      [
        3,
        13,
        'There is no way to make the option "late". The scenario has nothing that is called "technisians".',
        'technicians / hours',
      ],
      [4, 5, '"today" is what the options are compared with.', 'late start'],
      [
        5,
        12,
        'There is no way to make the option "more". "technicians count 3" is no change: a place, a colon and a value are needed.',
        'people / technicians / count: 3',
      ],
    ]);
  });
});

describe('rules for the hours of people', () => {
  it('are the usual ones unless something else is said', () => {
    const usual = { restHours: 11, hoursPerWeek: 48, daysInARow: 6, night: { fromHour: 23, toHour: 30 } };
    expect(staffOf('').rules).toEqual(usual);
    expect(staffOf('staff: { rest: 12 h, days in a row: 5, night: 22:00-05:00 }\n').rules).toEqual({
      restHours: 12,
      hoursPerWeek: 48,
      daysInARow: 5,
      night: { fromHour: 22, toHour: 29 },
    });
  });

  it.each([
    ['rest: 30 h', '"30 h" is not a time above 0, at most 24 h.', 'for example: 24 h'],
    ['rest: 10 to 12 h', 'Two numbers leave open what is usual.', 'for example: 11 h'],
    ['hours a week: 0 h', '"0 h" is not a time above 0, at most 168 h.', 'for example: 48 h'],
    [
      'night: 22:00-24:00 00:00-06:00',
      '"22:00-24:00 00:00-06:00" is more than one night.',
      'for example: 23:00-06:00',
    ],
    ['rests: 11 h', '"rests" is not known in "staff".', 'rest'],
  ])('are refused with what to write: %s', (line, message, write) => {
    expect(refusals(`staff:\n  ${line}\n`)).toEqual([[2, expect.any(Number), message, write]]);
  });
});
