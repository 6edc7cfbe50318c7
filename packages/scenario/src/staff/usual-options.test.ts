import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { changeScenario } from '../change/change-scenario.ts';
import { labOf } from '../fixture/lab-of.ts';
import { PLAIN_LAB } from '../fixture/plain-lab.ts';
import { readScenario } from '../read-scenario.ts';
import { usualStaffOptions } from './usual-options.ts';

const TEXT = PLAIN_LAB.replace(
  'technicians: { count: 2, hours: day, skills: [run machines, hand work] }',
  `technicians:
    count: 2
    hours: day
    skills: [run machines, hand work]
    other duties: 10 %
    leave: { 1: 2027-03-08, 2: [2027-03-15 to 2027-03-19, 2027-04-02] }
    absent: 3 % of days, 1 to 5 days at a time
  files: { hours: { mon-thu: 14:00-18:00 }, skills: prepare files }`,
);

/** What each option makes of the lab. */
function labsOf(text: string): Map<string, Lab> {
  const reading = readScenario(text, 'lab.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
  return new Map(
    usualStaffOptions(reading.scenario, text).map(({ name, changes }) => [
      name,
      labOf(changeScenario(text, changes)),
    ]),
  );
}

/** Name, number and skills of each group with the windows of Monday and the number of windows of the week. */
function groupsOf(lab: Lab | undefined): unknown[] {
  return (lab?.people ?? []).map(({ name, count, skills, calendar }) => {
    const weekly = lab?.calendars.find((one) => one.name === calendar)?.weekly ?? [];
    return [
      name,
      count,
      skills.length,
      weekly
        .filter(({ fromHour }) => fromHour < 24)
        .map(({ fromHour, toHour }) => `${fromHour}-${toHour}`)
        .join(' '),
      weekly.length,
    ];
  });
}

const labs = labsOf(TEXT);
const files = ['files', 1, 1, '14-18', 4];

describe('the ways of staffing that are made of a lab', () => {
  it('are those that its people and hours allow', () => {
    expect([...labs.keys()]).toEqual([
      'one of technicians from 10:00',
      'one of technicians from 11:00',
      'technicians early and late',
      'one of technicians in the evening',
      'one of technicians in the hours of files',
      'one of technicians on Saturday as well',
      'one of technicians on Saturday, not Friday',
      'one of technicians and files cross-trained',
      'one more of technicians',
      'one fewer of technicians',
      'one more of files',
    ]);
  });

  it.each([
    ['one of technicians from 10:00', 'late technicians', '10-14 14.5-18.5', 10],
    ['one of technicians from 11:00', 'late technicians', '11-15 15.5-19.5', 10],
    ['one of technicians in the evening', 'evening technicians', '16.5-20.5 21-25', 10],
    ['one of technicians in the hours of files', 'moved technicians', '14-18', 4],
    ['one of technicians on Saturday as well', 'Saturday technicians', '8-12 12.5-16.5', 11],
    ['one of technicians on Saturday, not Friday', 'Saturday technicians', '8-12 12.5-16.5', 10],
  ])('move one person with the same skills: %s', (name, moved, monday, windows) => {
    expect(groupsOf(labs.get(name))).toEqual([
      [moved, 1, 2, monday, windows],
      ['technicians', 1, 2, '8-12 12.5-16.5', 10],
      files,
    ]);
  });

  it('leave the others and everything else about those who move as it was', () => {
    const [moved, stays] = labs.get('one of technicians from 10:00')?.people ?? [];
    const [before] = labOf(TEXT).people;
    const { leave = [], ...rest } = before ?? {};
    expect(moved).toEqual({
      ...rest,
      name: 'late technicians',
      calendar: 'hours of late technicians',
      count: 1,
      leave: leave.filter(({ person }) => person === 2).map((one) => ({ ...one, person: 1 })),
    });
    expect(stays).toEqual({ ...rest, count: 1, leave: leave.filter(({ person }) => person === 1) });
    expect(moved?.leave).toHaveLength(2);
  });

  it('take Saturday morning for the end of Friday with the same hours', () => {
    const lab = labs.get('one of technicians on Saturday, not Friday');
    const weekly = lab?.calendars.find(({ name }) => name === 'hours of Saturday technicians')?.weekly ?? [];
    expect(weekly.slice(-2)).toEqual([
      { fromHour: 4 * 24 + 8, toHour: 4 * 24 + 12 },
      { fromHour: 5 * 24 + 8, toHour: 5 * 24 + 12 },
    ]);
    expect(weekly.reduce((sum, { fromHour, toHour }) => sum + toHour - fromHour, 0)).toBe(40);
  });

  it('let half of a group come early and the others when these leave', () => {
    expect(groupsOf(labs.get('technicians early and late'))).toEqual([
      ['late technicians', 1, 2, '14.5-18.5 19-23', 10],
      ['technicians', 1, 2, '6-10 10.5-14.5', 10],
      files,
    ]);
  });

  it('let one of each of two groups learn what the other can do', () => {
    const lab = labs.get('one of technicians and files cross-trained');
    expect(lab?.people.map(({ name, count, skills }) => [name, count, skills])).toEqual([
      ['trained technicians', 1, ['run machines', 'hand work', 'prepare files']],
      ['technicians', 1, ['run machines', 'hand work']],
      ['files', 1, ['prepare files', 'run machines', 'hand work']],
    ]);
  });

  it('count one person more and one fewer, and take the last of no group', () => {
    const counts = (name: string): unknown => labs.get(name)?.people.map(({ count }) => count);
    expect(counts('one more of technicians')).toEqual([3, 1]);
    expect(counts('one fewer of technicians')).toEqual([1, 1]);
    expect(counts('one more of files')).toEqual([2, 2]);
  });

  it('move all there is of a group of one, and nobody who is there day and night', () => {
    const one = TEXT.replace('count: 2', 'count: 1').replace(/ {4}leave: .*\n/, '');
    expect([...labsOf(one).keys()].slice(0, 3)).toEqual([
      'technicians from 10:00',
      'technicians from 11:00',
      'technicians on Saturday as well',
    ]);
    expect(groupsOf(labsOf(one).get('technicians from 10:00'))[0]).toEqual([
      'technicians',
      1,
      2,
      '10-14 14.5-18.5',
      10,
    ]);
    const always = one
      .replace('hours: day', 'hours: always')
      .replace('hours: { mon-thu: 14:00-18:00 }', 'hours: always');
    expect([...labsOf(always).keys()]).toEqual([
      'technicians and files cross-trained',
      'one more of technicians',
      'one more of files',
    ]);
  });

  it('keep closed and single days of hours that are moved', () => {
    const text = TEXT.replace(
      'day: { mon-fri: 08:00-12:00 12:30-16:30 }',
      'day: { mon-fri: 08:00-12:00 12:30-16:30, closed: 2027-03-10, extra: 2027-03-13 08:00-10:00 }',
    );
    const lab = labsOf(text).get('one of technicians from 10:00');
    const moved = lab?.calendars.find(({ name }) => name === 'hours of late technicians');
    expect(moved).toMatchObject({
      closedDays: [9],
      extra: [{ fromHour: 12 * 24 + 8, toHour: 12 * 24 + 10 }],
    });
  });
});
