import { describe, expect, it } from 'vitest';
import { labOf } from './fixture/lab-of.ts';
import { edited, PLAIN_LAB } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

describe('what a scenario leaves open', () => {
  it('is filled in, and listed with where it came from', () => {
    const reading = readScenario(PLAIN_LAB, 'lab.yaml');
    if (reading.kind === 'problems') throw new Error('the plain lab has problems');
    const of = (what: string) => reading.assumptions.find((assumption) => assumption.what === what);
    expect(of('machines / resin / set-up')).toEqual({
      what: 'machines / resin / set-up',
      value: '5 to 20 min, usually 10',
      source: 'default of a machine class',
      line: null,
    });
    expect(of('machines / resin / by')).toMatchObject({
      value: 'run machines',
      source: 'default of the program',
    });
    expect(of('machines / resin / count')).toMatchObject({
      value: '2',
      source: 'stated in the scenario',
      line: 9,
    });
    expect(of('routes / resin part / wash / level')).toMatchObject({
      value: 'build',
      source: 'default of the program',
    });
    expect(of('routes / resin part / wash / attended')).toMatchObject({ value: 'no' });
    expect(of('demand / ring / when')).toMatchObject({ value: 'day (lab hours)' });
    expect(of('lab hours')).toMatchObject({ value: 'day' });
    expect(of('zone')).toMatchObject({ value: 'none: no clock changes' });
  });

  it('takes the hours of the lab for arrivals, and any time where there are none', () => {
    const arrivals = labOf(PLAIN_LAB).demand[0]?.arrivals;
    expect(arrivals?.kind === 'poisson' ? arrivals.profile : null).toHaveLength(10);
    const anyTime = labOf(edited('jobs: 10 per week', 'jobs: 10 per week, when: any time')).demand[0]
      ?.arrivals;
    expect(anyTime).toMatchObject({ profile: null });
  });

  it('takes the name of the file for a plan without a name', () => {
    const reading = readScenario(edited('name: plain lab\n', ''), '/plans/spring quarter.yaml');
    expect(reading).toMatchObject({ kind: 'scenario', lab: { name: 'spring quarter' } });
  });

  it('takes "none" to switch off what a class would do', () => {
    const lab = labOf(edited('start: when full', 'warm-up: none, unload: none, start: when full'));
    expect(lab.machines[0]).toMatchObject({ warmUp: null, unload: null });
    expect(lab.machines[0]?.setUp).not.toBeNull();
  });

  it('finds a launch before closing that never comes', () => {
    const text = edited('hours: day, skills', 'hours: always, skills').replace(
      'when full or after 4 h',
      'before closing',
    );
    expect(readScenario(text, 'lab.yaml')).toMatchObject({
      problems: [
        { line: 9, message: '"resin" waits for closing time, and somebody is there day and night.' },
      ],
    });
  });
});
