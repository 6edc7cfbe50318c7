import { readFileSync } from 'node:fs';
import type { CountDistribution } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';
import { readWithAnyMesh } from '../fixture/shaped-lab.ts';
import { readScenario } from '../read-scenario.ts';
import { chanceOfSpell } from './build-people.ts';

const WEEKDAYS = [true, true, true, true, true, false, false];
const EVERY_DAY = WEEKDAYS.map(() => true);

/**
 * Share of the days of work that are missed in the long run when on each day of work, unless a spell goes on, a
 * spell begins with a chance: stationary distribution of the weekday and the days that are left of a spell,
 * by repeated steps.
 */
function missedShare(chance: number, lengths: readonly number[], workDays: readonly boolean[]): number {
  const longest = Math.max(...lengths);
  let states: number[] = Array.from({ length: 7 * (longest + 1) }, (_, state) => (state === 0 ? 1 : 0));
  let missed = 0;
  let worked = 0;
  const warmUp = 7 * 400;
  for (let step = 0; step < 2 * warmUp; step++) {
    const day = step % 7;
    const next = states.map(() => 0);
    let absent = 0;
    for (let left = 0; left <= longest; left++) {
      const probability = states[day * (longest + 1) + left] ?? 0;
      const go = (days: number, share: number): void => {
        if (days > 0) absent += probability * share;
        const target = ((day + 1) % 7) * (longest + 1) + Math.max(0, days - 1);
        next[target] = (next[target] ?? 0) + probability * share;
      };
      if (left > 0 || !workDays[day]) go(left, 1);
      else {
        go(0, 1 - chance);
        for (const length of lengths) go(length, chance / lengths.length);
      }
    }
    states = next;
    if (step < warmUp || !workDays[day]) continue;
    worked++;
    missed += absent;
  }
  return missed / worked;
}

describe('absence by chance', () => {
  it('single days are missed in exactly the stated share of the days of work', () => {
    for (const share of [0.01, 0.03, 0.2]) {
      const chance = chanceOfSpell({ share, days: { kind: 'fixed', value: 1 } }, WEEKDAYS);
      expect(chance).toBeCloseTo(share, 12);
      expect(missedShare(chance, [1], WEEKDAYS)).toBeCloseTo(share, 9);
    }
  });

  it('spells of several days are missed in the stated share of the days of work', () => {
    const spells: readonly [CountDistribution, number[]][] = [
      [{ kind: 'uniform', low: 1, high: 5 }, [1, 2, 3, 4, 5]],
      [{ kind: 'fixed', value: 14 }, [14]],
      [{ kind: 'list', values: [1, 1, 8] }, [1, 1, 8]],
    ];
    for (const [days, lengths] of spells) {
      for (const workDays of [WEEKDAYS, EVERY_DAY]) {
        const chance = chanceOfSpell({ share: 0.03, days }, workDays);
        // That spells begin on each weekday alike is exact when every day is worked.
        const tolerance = workDays === EVERY_DAY ? 1e-9 : 0.03 * 0.02;
        expect(Math.abs(missedShare(chance, lengths, workDays) - 0.03)).toBeLessThan(tolerance);
      }
    }
  });

  it('geometric spells are counted to their end', () => {
    const days: CountDistribution = { kind: 'geometric', mean: 3 };
    // Every day worked: a spell misses its three days on average.
    expect(chanceOfSpell({ share: 0.03, days }, EVERY_DAY)).toBeCloseTo(0.03 / (0.03 + 3 * 0.97), 8);
  });
});

describe('leave', () => {
  const leaveOf = (leave: string) => {
    const reading = readScenario(edited('count: 2, hours', `count: 2, leave: ${leave}, hours`), 'lab.yaml');
    if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
    return reading.lab.people[0]?.leave;
  };

  it('runs from midnight of its first day to midnight after its last, counted from the start of the plan', () => {
    expect(leaveOf('{ 2: 2027-03-02 to 2027-03-03 }')).toEqual([{ person: 2, fromHour: 24, toHour: 72 }]);
    expect(leaveOf('{ technicians 1: [2027-03-08, 2027-02-26 to 2027-03-01] }')).toEqual([
      { person: 1, fromHour: 168, toHour: 192 },
      { person: 1, fromHour: -72, toHour: 24 },
    ]);
  });

  it('that is over before the plan starts is left out with a warning', () => {
    const text = edited('count: 2, hours', 'count: 2, leave: { 1: 2027-02-01 to 2027-02-05 }, hours');
    expect(problemsOf(text)).toMatchObject([
      { severity: 'warning', line: 7, message: 'This leave is over before the plan starts.' },
    ]);
    expect(leaveOf('{ 1: 2027-02-01 to 2027-02-05 }')).toEqual([]);
  });

  it('that does not say whose it is among several is taken for that of person 1, with a warning', () => {
    const dates = '2027-03-02 to 2027-03-03';
    expect(problemsOf(edited('count: 2, hours', `count: 2, leave: ${dates}, hours`))).toMatchObject([
      {
        severity: 'warning',
        line: 7,
        column: 35,
        message:
          '"technicians" are 2 persons, and this does not say whose leave it is: it is taken for that of person 1.',
        write: `leave: { 1: ${dates} }`,
      },
    ]);
    expect(leaveOf(dates)).toEqual(leaveOf(`{ 1: ${dates} }`));
    expect(leaveOf('[2027-03-02, 2027-03-03]')).toEqual(leaveOf('{ 1: [2027-03-02, 2027-03-03] }'));
  });

  it('of a person who is not there is left out with a warning', () => {
    expect(problemsOf(edited('count: 2, hours', 'count: 2, leave: { 3: 2027-04-05 }, hours'))).toMatchObject([
      {
        severity: 'warning',
        line: 7,
        column: 37,
        message: '"technicians" has no person 3: this leave has no effect.',
        write: 'count: 3 at "technicians", or the leave without 3',
      },
    ]);
    expect(leaveOf('{ 3: 2027-04-05, 2: 2027-03-02 }')).toEqual(leaveOf('{ 2: 2027-03-02 }'));
  });

  it('does not stand in the way of trying another number of people', () => {
    const demo = readFileSync(new URL('../../../../scenarios/demo.yaml', import.meta.url), 'utf8');
    for (const count of [1, 2, 3, 4]) {
      const reading = readWithAnyMesh(demo.replace('count: 2', `count: ${count}`));
      expect(reading).toMatchObject({ kind: 'scenario', lab: { people: [{ count }, { count: 1 }] } });
    }
  });
});
