import type { WayOfMaking } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { verdictOf } from './verdict.ts';

/** A way that takes so many hours for 1, 10 and 100 pieces, and so many minutes of people for each piece. */
function way(route: string, hours: readonly [number, number, number], minutes: number): WayOfMaking {
  const point = (value: number) => ({ typical: value, low: value, high: value });
  const quantities = [1, 10, 100].map((quantity, index) => ({
    quantity,
    finished: [{ asked: 'Monday 09:00', hours: point(hours[index] ?? 0) }],
    hoursPerPart: point((hours[index] ?? 0) / quantity),
    minutesOfPeoplePerPart: point(minutes),
    builds: 1,
  }));
  return {
    route,
    process: 'MEX',
    machines: route,
    machineCount: 1,
    size: { width: 1, depth: 1, height: 1 },
    orientation: 'as given',
    mostPerBuild: 10,
    printHoursOfOne: 1,
    printHoursOfFull: 8,
    timelines: [
      {
        asked: 'Monday 09:00',
        stretches: [],
        hours: hours[0],
        attendedHours: 0.5,
        unattendedHours: 1,
        closedHours: 2,
      },
    ],
    quantities,
    curve: quantities.map(({ quantity }, index) => ({
      quantity,
      hours: hours[index] ?? 0,
      minutesOfPeople: minutes,
    })),
  };
}

describe('The verdict on a part', () => {
  it('says which way for few and for many, where it turns, why, and what people have to do', () => {
    const ways = [way('quick', [3, 30, 300], 20), way('slow', [20, 25, 60], 5)];
    const overtakings = [{ slower: 'quick', faster: 'slow', quantity: 8, low: 7, high: 9 }];
    expect(verdictOf({ ways, overtakings }, 'Monday 09:00')).toEqual([
      'For one piece: quick (MEX), finished 3.0 h after it is asked for on Monday 09:00; slow 20.0 h.',
      'For 100 pieces: slow (MEX), finished 2.5 days after it is asked for on Monday 09:00; quick 12.5 days.',
      'Fastest by number of pieces: quick up to 7, slow from 8 on.',
      'Of the 3.0 h of one piece by quick, printing takes about 1.0 h, and people work 20 min; 2.0 h pass while nobody is there or free.',
      'What turns it for many pieces: by slow, a full build of 10 prints 8.0 h, 48 min for each piece (one alone: 1.0 h); by quick, a full build of 10 prints 8.0 h, 48 min for each piece (one alone: 1.0 h).',
      'Least work for people at 100 pieces: slow with 5.0 min of hands per piece; most: quick with 20 min.',
    ]);
  });

  it('does not tell where it turns when one way is ahead for any number', () => {
    const sentences = verdictOf(
      { ways: [way('quick', [3, 30, 60], 5), way('slow', [20, 40, 80], 9)], overtakings: [] },
      '',
    );
    expect(sentences.join(' ')).not.toMatch(/Fastest by number/);
    expect(sentences.join(' ')).toMatch(/By quick, a full build of 10 prints 8\.0 h/);
  });

  it('sums up a lead that changes often', () => {
    const one = way('one', [1, 10, 100], 5);
    const other = way('other', [2, 9, 101], 5);
    const grid = [1, 2, 3, 4, 5, 6];
    const curve = (hours: (quantity: number) => number) =>
      grid.map((quantity) => ({ quantity, hours: hours(quantity), minutesOfPeople: 1 }));
    const ways = [
      { ...one, curve: curve((quantity) => quantity) },
      { ...other, curve: curve((quantity) => quantity + (quantity % 2 === 0 ? -0.5 : 0.5)) },
    ];
    expect(verdictOf({ ways, overtakings: [] }, '').join(' ')).toContain(
      'Fastest by number of pieces: one for one, other from 6 on; in between other, one take turns, since nights and full builds make steps.',
    );
  });

  it('says when no process can make the part', () => {
    expect(verdictOf({ ways: [], overtakings: [] }, '')).toEqual([
      'No process of this lab can make the part within a year.',
    ]);
  });
});
