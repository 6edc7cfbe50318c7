import type { Lab } from '@buildweek/model';
import { describe, expect, test } from 'vitest';
import { PLAIN_LAB } from '../fixture/plain-lab.ts';
import { readScenario, type ScenarioReading } from '../read-scenario.ts';
import { changeScenario } from './change-scenario.ts';
import { readChanges } from './change-wording.ts';
import { type Factor, factorChanges } from './factor-changes.ts';

type Read = Extract<ScenarioReading, { kind: 'scenario' }>;

function read(text: string): Read {
  const reading = readScenario(text, 'lab.yaml');
  if (reading.kind === 'problems') throw new Error(JSON.stringify(reading.problems[0]));
  return reading;
}

/** The lab with a factor, by way of the words that a user would type. */
function labWith(text: string, of: Factor, factor: number): Lab {
  const wordings = factorChanges(read(text), of, factor).map(({ wording }) => wording);
  return read(changeScenario(text, readChanges(wordings.join('; ')))).lab;
}

const CLASSES = `buildweek: 1
name: Classes
starts: 2027-03-01
people:
  technicians: { count: 2, hours: { mon-fri: 08:00-16:00 }, skills: [run machines, prepare files, hand work] }
machines:
  filament: { class: small MEX, count: 2 }
  powder: { class: compact PBF }
  stated: { class: small MEX, breaks down: about 100 h of running, fails: { chance: 2 % of builds plus 0.1 % per print hour, loses: one job } }
  two:
    class: small MEX
    breaks down:
      - { every: weibull shape 1.5, mean 400 h of running, repair: 1 h }
      - { called: leak, every: 4 weeks by the clock, service: { response: 24 h, takes: 2 h } }
routes:
  a: [{ build: { on: filament } }]
  b: [{ build: { on: powder } }]
parts:
  ring: { route: a, size: 20 x 20 x 20 mm, volume: 4 cm3 }
  clip: { route: b, size: 20 x 20 x 20 mm, volume: 4 cm3, material: nylon }
demand:
  ring: { jobs: 14 per week, pieces: 1 to 4 }
  clip: { every: exponential mean 8 h }
`;

describe('A factor in words of the scenario', () => {
  test('on demand lets so many times the jobs arrive, and changes nothing else', () => {
    const { lab } = read(CLASSES);
    const [ring, clip] = lab.demand;
    expect(labWith(CLASSES, 'demand', 1.25)).toEqual({
      ...lab,
      demand: [
        { ...ring, arrivals: { ...ring?.arrivals, perWeek: 17.5 } },
        { ...clip, arrivals: { ...clip?.arrivals, gap: { kind: 'exponential', mean: 6.4 } } },
      ],
    });
  });

  test('on failed builds takes shares of builds and of print hours alike', () => {
    const { lab } = read(CLASSES);
    const changed = labWith(CLASSES, 'failed builds', 1.5);
    expect(changed).toEqual({
      ...lab,
      machines: lab.machines.map((group, index) => ({
        ...group,
        failure: group.failure && {
          ...group.failure,
          chancePerBuild: expect.closeTo(group.failure.chancePerBuild * 1.5, 9),
          perPrintHour: expect.closeTo(group.failure.perPrintHour * 1.5, 9),
        },
        name: changed.machines[index]?.name,
      })),
    });
  });

  test('on breakdowns halves the time between them, whoever states it, and changes nothing else', () => {
    const { lab } = read(CLASSES);
    const changed = labWith(CLASSES, 'breakdowns', 2);
    const rarer = (one: Lab): unknown =>
      one.machines.map(({ breakdowns }) => breakdowns.map(({ name, between }) => [name, between]));
    expect(rarer(changed)).toEqual(
      lab.machines.map(({ breakdowns }) =>
        breakdowns.map(({ name, between }) => [
          name,
          between.kind === 'exponential'
            ? { ...between, mean: between.mean / 2 }
            : between.kind === 'weibull'
              ? { ...between, scale: expect.closeTo(between.scale / 2, 9) }
              : { kind: 'constant', value: 336 },
        ]),
      ),
    );
    const rest = (one: Lab): unknown => ({
      ...one,
      machines: one.machines.map((group) => ({
        ...group,
        breakdowns: group.breakdowns.map((breakdown) => ({ ...breakdown, between: null })),
      })),
    });
    expect(rest(changed)).toEqual(rest(lab));
  });

  test('of one changes no word, and jobs on dates stay', () => {
    expect(factorChanges(read(CLASSES), 'breakdowns', 1)).toEqual([]);
    const dated = PLAIN_LAB.replace(/jobs: \d+ per week/, 'dates: [2027-03-01 09:00]');
    expect(dated).not.toBe(PLAIN_LAB);
    expect(factorChanges(read(dated), 'demand', 2)).toEqual([]);
  });
});
