import { readFileSync } from 'node:fs';
import { parseResults } from '@buildweek/results';
import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const folder = new Folder();
afterAll(() => folder.remove());

/** One bench for 40 hours a week at 30 an hour, a hundred parts a week for which nothing is built. */
const SCENARIO = `buildweek: 1
name: bench
simulate: { weeks: 4, ignored weeks: 1, replications: 20, seed: money }
people:
  technician: { skills: [sand], hours: { mon-fri: 08:00-16:00 }, hourly cost: 30 }
stations:
  oven: { holds: 1 job, price: 5000, worth at the end: 1000, owned: 0, yearly cost: 300 }
routes:
  plain:
    - harden: { on: oven, takes: 1 h per job }
    - sand: { by: sand, takes: 10 min per part, may pause: yes }
parts:
  cap: { route: plain, material cost: 2, price outside: 25 }
demand:
  cap: { every: 1.68 h }
money: { currency: CHF, interest: 0 %, judged over: 5 years, other costs: 500 per month }
`;

describe('money', () => {
  it('is known beforehand as far as it does not depend on what happens', async () => {
    const path = folder.write('bench.yaml', SCENARIO);
    const { exitCode, stdout } = await buildweek(['check', path]);
    expect(exitCode).toBe(0);
    const text = stdout.replaceAll(/[\u00a0\u202f]/g, ' ');
    // 4000 over 5 years, 40 h for 52.18 weeks at 30, and 6000 of other costs.
    expect(text).toMatch(/oven +1 +1 for 5000 +800 +300 +1100/);
    expect(text).toMatch(/technician +1 +62 614/);
    expect(text).toMatch(/together +5000 +800 +300 +69 714/);
  });

  it('is told of a finished part and of the lab, with the case against sending everything out', async () => {
    const path = folder.write('played.yaml', SCENARIO);
    const json = folder.file('played.json');
    const { exitCode, stdout } = await buildweek(['run', path, '--json', json]);
    expect(exitCode).toBe(0);
    const { money, headline } = parseResults(readFileSync(json, 'utf8'));
    if (money?.case.kind !== 'compared') throw new Error('The lab is compared.');
    // A hundred jobs of one part a week arrive by the clock: 5218 a year at 25 outside and 2 of material.
    const parts = (100 * 365.25) / 7;
    expect(money.case.outsidePerYear.value / (25 * parts)).toBeCloseTo(1, 2);
    expect(money.total.perYear.value / (69_714 + 2 * parts)).toBeCloseTo(1, 2);
    const saved = 23 * parts - 300 - 62_614 - 6000;
    expect(Math.abs(money.case.savedPerYear.value / saved - 1)).toBeLessThan(0.02);
    expect(Math.abs(money.case.netPresentValue.value / (5 * saved - 4000) - 1)).toBeLessThan(0.02);
    expect(headline.some((sentence) => sentence.startsWith('A finished part costs '))).toBe(true);
    expect(stdout).toContain('CHF per finished part');
    expect(stdout.replace(/\s+/g, ' ')).toContain('the lab against sending everything out');
  });

  it.each([
    ['price: 5000', 'price: 5000 EUR', 'This is in EUR, and line 16 says that money is in CHF.'],
    [', hourly cost: 30', '', '"hourly cost" is missing in "technician".'],
    ['price: 5000', 'price: -5000', 'It cannot be negative.'],
  ])('is refused where it is not sound: %s -> %s', async (from, to, message) => {
    const json = folder.file('none.json');
    const path = folder.write('wrong.yaml', SCENARIO.replace(from, to));
    const { exitCode, stderr, stdout } = await buildweek(['run', path, '--json', json]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain(message);
    expect(() => readFileSync(json)).toThrow();
  });
});
