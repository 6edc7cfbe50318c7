import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { twoWays } from '../fixture/printing-lab.ts';
import { verdictOf } from './verdict.ts';
import { type PartQuestion, waysOfMaking } from './ways-of-making.ts';

function question(more: Partial<PartQuestion> = {}): PartQuestion {
  return {
    ways: asWays(twoWays()),
    asked: [
      { label: 'Monday 09:00', hour: 9 },
      { label: 'Friday 15:00', hour: 111 },
    ],
    quantities: [1, 4, 16],
    seed: 'test',
    plays: 20,
    ...more,
  };
}

/** The part types of a lab as so many ways of making one part. */
function asWays(lab: Lab): PartQuestion['ways'] {
  return lab.parts.map((part) => ({ lab: { ...lab, parts: [part] }, orientation: 'as given' }));
}

describe('The ways of making a part', () => {
  it('tell one piece, stage by stage, in the hours of the lab', () => {
    const [singly] = waysOfMaking(question()).ways;
    const [monday, friday] = singly?.timelines ?? [];
    // By hand: 09:00 prepare, 09:30 set up, 09:45 print, 10:45 unload, 11:00 clean, 11:15 done.
    expect(
      monday?.stretches.map(({ stage, phase, fromHour, toHour }) => [stage, phase, fromHour, toHour]),
    ).toEqual([
      ['prepare', 'work', 0, 0.5],
      ['build', 'set-up', 0.5, 0.75],
      ['build', 'print', 0.75, 1.75],
      ['build', 'unload', 1.75, 2],
      ['clean', 'work', 2, 2.25],
    ]);
    expect(monday).toMatchObject({ hours: 2.25, attendedHours: 1.25, unattendedHours: 1, closedHours: 0 });
    // Friday 15:00 prepare, 15:30 set up, 15:45 print until 16:45; nobody comes before Monday 08:00; 08:30 done.
    expect(friday).toMatchObject({
      hours: 65.5,
      attendedHours: 1.25,
      unattendedHours: 1,
      closedHours: 63.25,
    });
  });

  it('count pieces, builds and the minutes of people', () => {
    const [singly, together] = waysOfMaking(question()).ways;
    expect(singly).toMatchObject({
      mostPerBuild: 4,
      printHoursOfOne: 1,
      printHoursOfFull: 4,
      process: 'MEX',
    });
    expect(together).toMatchObject({
      mostPerBuild: 16,
      printHoursOfOne: 3,
      printHoursOfFull: 3,
      process: 'VPP',
    });
    // Four pieces: half an hour, twice a quarter, and a quarter for each: two hours, 30 min a piece. Sixteen together:
    // half an hour, twice a quarter, and 16 times 0.1 h.
    expect(singly?.quantities[1]).toMatchObject({
      builds: 1,
      minutesOfPeoplePerPart: { typical: 30, low: 30, high: 30 },
    });
    expect(together?.quantities[2]?.builds).toBe(1);
    expect(together?.quantities[2]?.minutesOfPeoplePerPart.typical).toBeCloseTo((2.6 * 60) / 16, 10);
  });

  it('overtake each other where the curves cross', () => {
    const { overtakings, ways } = waysOfMaking(question());
    // By hand, asked on Monday 09:00. Singly: 09:45 + n h, unload, clean n quarters: 1.0 + 1.25 n h while it ends
    // before 16:00 (n up to 4). Together: 09:45 + 3 h + 0.5 h, unload: 13:30, clean: 4.5 + 0.1 n h.
    // 1 + 1.25 n > 4.5 + 0.1 n from n = 4 on (6 against 4.9; for 3: 4.75 against 4.8).
    expect(overtakings).toEqual([{ slower: 'singly', faster: 'together', quantity: 4, low: 4, high: 4 }]);
    const hoursAt = (way: number, pieces: number) =>
      ways[way]?.curve.find(({ quantity }) => quantity === pieces)?.hours;
    expect(hoursAt(0, 3)).toBeCloseTo(4.75, 10);
    expect(hoursAt(1, 3)).toBeCloseTo(4.8, 10);
    expect(verdictOf({ ways, overtakings }, 'Monday 09:00').join(' ')).toContain(
      'Fastest by number of pieces: singly up to 3, together from 4 on.',
    );
  });

  it('do not depend on what else the lab has to do, or on what goes wrong in it', () => {
    const lab = twoWays();
    const busy = {
      ...lab,
      demand: twoWays().demand,
      machines: lab.machines.map((machine) => ({
        ...machine,
        launch: { ...machine.launch, fullShare: 1, beforeClosing: true },
        failure: { chancePerBuild: 0.5, perPrintHour: 0, loses: 'the build' as const, cleaning: null },
      })),
      calendars: lab.calendars.map((calendar) => ({ ...calendar, closedDays: [0, 1, 2] })),
    };
    expect(waysOfMaking(question({ ways: asWays(busy) }))).toEqual(waysOfMaking(question()));
  });

  it('spread as the times do', () => {
    const lab = twoWays();
    const wide = {
      ...lab,
      machines: lab.machines.map((machine) =>
        machine.shaped === null
          ? machine
          : {
              ...machine,
              shaped: { ...machine.shaped, timeFactor: { kind: 'measured' as const, values: [0.5, 1, 1.5] } },
            },
      ),
    };
    const [, together] = waysOfMaking(question({ ways: asWays(wide), plays: 60 })).ways;
    // Three hours of print, half as long or half as long again.
    expect(together?.quantities[0]?.finished[0]?.hours).toEqual({ typical: 4.6, low: 3.1, high: 6.1 });
  });

  it('refuse too few plays and impossible quantities', () => {
    expect(() => waysOfMaking(question({ plays: 5 }))).toThrow(/At least 20 plays/);
    expect(() => waysOfMaking(question({ quantities: [0] }))).toThrow(/whole number from 1 up/);
  });
});
