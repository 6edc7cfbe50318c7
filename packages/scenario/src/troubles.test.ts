import type { Lab, MachineGroup, StationGroup } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { MACHINE_CLASSES } from './classes/machine-classes.ts';
import { MACHINE_TROUBLES } from './classes/machine-troubles.ts';
import { edited } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

function scenarioOf(text: string) {
  const reading = readScenario(text, 'lab.yaml');
  if (reading.kind === 'problems') {
    throw new Error(reading.problems.map((problem) => `${problem.line}: ${problem.message}`).join('\n'));
  }
  return reading;
}

function labOf(from: string, to: string): Lab {
  return scenarioOf(edited(from, to)).lab;
}

/** The machine of the plain lab, without what its class says, with keys put in. */
function machineWith(keys: string): MachineGroup {
  const machine = labOf('class: small mask VPP', `set-up: 10 min, unload: 6 min, ${keys}`).machines[0];
  if (machine === undefined) throw new Error('no machine');
  return machine;
}

function stationWith(keys: string): StationGroup {
  const station = labOf('by: run machines', `by: run machines, ${keys}`).stations[0];
  if (station === undefined) throw new Error('no station');
  return station;
}

const OWN_REPAIR = {
  skill: 'run machines',
  persons: 1,
  duration: { distribution: { kind: 'pert', low: 0.5, mode: 1.5, high: 6 }, typicalHours: 1.5 },
  pausable: true,
};

describe('breakdowns', () => {
  it('say how often, who repairs, and what becomes of the build', () => {
    const { breakdowns } = machineWith(
      'breaks down: { every: about 250 h of running, build: goes on, repair: { by: hand work, people: 2, takes: "30 min to 6 h, usually 1.5 h" } }',
    );
    expect(breakdowns).toEqual([
      {
        name: 'breakdown',
        by: 'running hours',
        between: { kind: 'exponential', mean: 250 },
        effect: 'build goes on after the repair',
        repair: { kind: 'own', work: { ...OWN_REPAIR, skill: 'hand work', persons: 2 } },
      },
    ]);
  });

  it('are repaired by those who run the machine, and lose the build, unless it says otherwise', () => {
    const { breakdowns } = machineWith(
      'by: hand work, breaks down: { every: 90 days by the clock, repair: 0.5 to 6 h, usually 1.5 }',
    );
    expect(breakdowns).toEqual([
      {
        name: 'breakdown',
        by: 'clock',
        between: { kind: 'constant', value: 2160 },
        effect: 'loses the build',
        repair: { kind: 'own', work: { ...OWN_REPAIR, skill: 'hand work' } },
      },
    ]);
  });

  it('can be several, and wait for a service in its hours or at any time', () => {
    const { breakdowns } = machineWith(
      'breaks down: [{ called: film, every: about 300 h of running, repair: 1 h }, ' +
        '{ every: about 900 h of running, service: { response: 8 h, takes: 2 h, hours: day } }, ' +
        '{ every: about 900 h of running, service: { response: 8 h, takes: 2 h } }]',
    );
    const visit = { kind: 'constant', value: 2 };
    expect(breakdowns.map(({ name }) => name)).toEqual(['film', 'breakdown 2', 'breakdown 3']);
    expect(breakdowns.map(({ repair }) => repair).slice(1)).toEqual([
      { kind: 'service', response: { kind: 'constant', value: 8 }, visit, calendar: 'day' },
      { kind: 'service', response: { kind: 'constant', value: 8 }, visit, calendar: null },
    ]);
  });

  it('of stations let the batch start again or go on', () => {
    const repair = 'every: about 900 h of running, repair: 1 h';
    expect(stationWith(`breaks down: { ${repair} }`).breakdowns[0]?.effect).toBe('loses the build');
    expect(stationWith(`breaks down: { ${repair}, batch: goes on }`).breakdowns[0]?.effect).toBe(
      'build goes on after the repair',
    );
  });
});

describe('what a class says of troubles', () => {
  it('holds for every class, and a class brings it, listed as its assumption', () => {
    expect([...MACHINE_TROUBLES.keys()]).toEqual([...MACHINE_CLASSES.keys()]);
    for (const name of MACHINE_CLASSES.keys()) {
      const reading = scenarioOf(
        edited('class: small mask VPP', `class: ${name}`).replace('12:00 12:30', '12:30 12:30'),
      );
      const [machine] = reading.lab.machines;
      // Faults by one's own people and by the service together come as often as the table of ranges says.
      const rate = machine?.breakdowns.reduce(
        (sum, { between }) => sum + (between.kind === 'exponential' ? 1 / between.mean : Number.NaN),
        0,
      );
      const hoursBetween: Readonly<Record<string, number>> = {
        'small MEX': 250,
        'heated MEX': 500,
        'small mask VPP': 400,
        'large laser VPP': 700,
        'compact PBF': 500,
        'large PBF': 700,
      };
      expect(1 / (rate ?? 0)).toBeCloseTo(hoursBetween[name] ?? 0, 9);
      expect(machine?.chores).toMatchObject([{ kind: 'maintenance', by: 'running hours' }]);
      expect(machine?.failure?.chancePerBuild).toBeGreaterThanOrEqual(0.03);
      const fails = reading.assumptions.find(({ what }) => what === 'machines / resin / fails');
      expect(fails?.source).toBe('default of a machine class');
    }
  });

  it('is switched off by "never" and "none"', () => {
    const machine = labOf(
      'class: small mask VPP',
      'class: small mask VPP, breaks down: never, fails: never, maintenance: none',
    ).machines[0];
    expect(machine).toMatchObject({ breakdowns: [], failure: null, chores: [] });
  });

  it('stands in for what is not written', () => {
    const often = labOf(
      'class: small mask VPP',
      'class: small mask VPP, breaks down: about every 100 h of running',
    );
    const repaired = labOf('class: small mask VPP', 'class: small mask VPP, breaks down: { repair: 1 h }');
    const visited = labOf(
      'class: small mask VPP',
      'class: small mask VPP, breaks down: { service: { response: 8 h, takes: 2 h } }',
    );
    const cleaned = labOf('class: small mask VPP', 'class: small mask VPP, fails: { cleaning: 10 min }');
    expect(cleaned.machines[0]?.failure).toMatchObject({
      chancePerBuild: 0.06,
      cleaning: { duration: { typicalHours: 1 / 6 } },
    });
    const kept = labOf('class: small mask VPP', 'class: small mask VPP, maintenance: { takes: 2 h }');
    expect(often.machines[0]?.breakdowns).toMatchObject([
      { between: { mean: 100 }, repair: { kind: 'own', work: { duration: { typicalHours: 2 } } } },
    ]);
    expect(repaired.machines[0]?.breakdowns).toMatchObject([
      { between: { mean: 400 }, repair: { kind: 'own', work: { duration: { typicalHours: 1 } } } },
    ]);
    expect(visited.machines[0]?.breakdowns).toMatchObject([
      { between: { mean: 400 }, repair: { kind: 'service', calendar: null } },
    ]);
    expect(kept.machines[0]?.chores).toMatchObject([
      { every: { value: 150 }, work: { duration: { typicalHours: 2 } } },
    ]);
  });

  it('is the share of rejects for stages that ask for the usual one', () => {
    const reading = scenarioOf(edited('may pause: yes }', 'may pause: yes, rejects: usual back to build }'));
    expect(reading.lab.parts[0]?.stages.at(-1)?.rejects).toEqual({ share: 0.05, backTo: 'build' });
    expect(reading.assumptions).toContainEqual({
      what: 'routes / resin part / sand / rejects / share',
      value: '5 %',
      source: 'default of a machine class',
      line: null,
    });
  });
});

describe('what machines owe and may', () => {
  it('maintenance is attended and may pause, test prints run by themselves, unless it says otherwise', () => {
    const { chores } = machineWith(
      'maintenance: [{ every: 200 h of running, takes: 1 h }, { called: optics, every: 26 weeks by the clock, takes: 2 h, by: hand work, people: 2, may pause: no }], ' +
        'test prints: [{ every: 2 weeks by the clock, takes: 3 h }, { every: 4 weeks by the clock, takes: 30 min, by: hand work }]',
    );
    expect(chores.map(({ name, kind, by }) => [name, kind, by])).toEqual([
      ['maintenance 1', 'maintenance', 'running hours'],
      ['optics', 'maintenance', 'clock'],
      ['test prints 1', 'test print', 'clock'],
      ['test prints 2', 'test print', 'clock'],
    ]);
    expect(chores.map(({ work }) => work && [work.skill, work.persons, work.pausable])).toEqual([
      ['run machines', 1, true],
      ['hand work', 2, false],
      null,
      ['hand work', 1, true],
    ]);
    expect(chores.map(({ duration }) => duration?.typicalHours ?? null)).toEqual([null, null, 3, null]);
  });

  it('builds fail by chance or by the print hour, and lose the build or one job', () => {
    expect(machineWith('fails: 5 % of builds').failure).toEqual({
      chancePerBuild: 0.05,
      perPrintHour: 0,
      loses: 'the build',
      cleaning: null,
    });
    expect(
      machineWith('fails: { chance: 2 % of builds plus 0.1 % per print hour, cleaning: 20 min }').failure,
    ).toMatchObject({
      chancePerBuild: 0.02,
      perPrintHour: 0.001,
      cleaning: { skill: 'run machines', duration: { typicalHours: 1 / 3 } },
    });
    expect(machineWith('fails: { chance: 6 % of builds, loses: one job }').failure?.loses).toBe('one job');
    expect(machineWith('process: VPP').failure).toBeNull();
  });

  it('first layers are watched by those who run the machine', () => {
    expect(machineWith('first layers: 10 min').firstLayers).toMatchObject({ skill: 'run machines' });
    expect(machineWith('process: VPP').firstLayers).toBeNull();
  });

  it('hours in which it is there or may run alone, and how it is noticed', () => {
    expect(
      machineWith('available: day, runs alone: [mon-thu 16:00-24:00], noticed: on rounds every 2 h'),
    ).toMatchObject({
      calendar: 'day',
      unattendedHours: [0, 24, 48, 72].map((day) => ({ fromHour: day + 16, toHour: day + 24 })),
      noticing: { kind: 'rounds', everyHours: 2 },
    });
    expect(machineWith('available: always, runs alone: always')).toMatchObject({
      calendar: null,
      unattendedHours: null,
      noticing: { kind: 'when somebody is in' },
    });
    expect(machineWith('runs alone: [mon-fri 16:00-08:00, fri 16:00 to mon 08:00]').unattendedHours).toEqual([
      { fromHour: 0, toHour: 8 },
      { fromHour: 16, toHour: 32 },
      { fromHour: 40, toHour: 56 },
      { fromHour: 64, toHour: 80 },
      { fromHour: 88, toHour: 104 },
      { fromHour: 112, toHour: 168 },
    ]);
  });
});

describe('what goes wrong along the route', () => {
  it('rejects go back to the build unless a stage is named', () => {
    const rejects = (text: string) =>
      labOf('may pause: yes }', `may pause: yes, rejects: ${text} }`).parts[0]?.stages.at(-1)?.rejects;
    expect(rejects('4 %')).toEqual({ share: 0.04, backTo: 'build' });
    expect(rejects('4 % back to sand')).toEqual({ share: 0.04, backTo: 'sand' });
    expect(rejects('none')).toBeNull();
  });

  it('rejects of a route without a build go back to its first stage', () => {
    const text = edited('route: resin part, fits: 8 per build, print: 3 h per build', 'route: plain').replace(
      'routes:\n',
      'routes:\n  plain: [{ cut: { by: hand work, takes: 5 min } }, { sand: { by: hand work, takes: 5 min, rejects: 4 % } }]\n',
    );
    expect(scenarioOf(text).lab.parts[0]?.stages[1]?.rejects).toEqual({ share: 0.04, backTo: 'cut' });
  });

  it('a longest wait counts from the stage just before', () => {
    const lab = labOf('may pause: yes }', 'may pause: yes, at most: 2 h after dry }');
    expect(lab.parts[0]?.stages.map((stage) => stage.maximumWaitHours)).toEqual([null, null, null, 2]);
  });

  it('a share of jobs waits for the requester', () => {
    const lab = labOf(
      '    - build:',
      '    - ask: { ask requester: 20 % of jobs, takes: "1 to 48 h, usually 6" }\n    - build:',
    );
    expect(lab.parts[0]?.stages[0]).toMatchObject({
      kind: 'wait',
      name: 'ask',
      level: 'job',
      requesterChance: 0.2,
      duration: { typicalHours: 6 },
    });
    expect(lab.parts[0]?.stages.find((stage) => stage.name === 'dry')).toMatchObject({
      requesterChance: null,
    });
  });

  it('jobs are withdrawn and revised, in a line or as a group of keys', () => {
    const changes = labOf(
      'promise: 3 working days',
      'cancels: 3 % after 2 to 72 h, usually 24, only before start, revises: { chance: 5 %, after: 1 day }',
    ).demand[0]?.changes;
    expect(changes).toEqual({
      cancels: {
        chance: 0.03,
        after: { kind: 'pert', low: 2, mode: 24, high: 72 },
        onlyBeforeStart: true,
      },
      revises: { chance: 0.05, after: { kind: 'constant', value: 24 }, onlyBeforeStart: false },
    });
  });

  it('an endless backlog keeps a number of jobs in the lab', () => {
    expect(labOf('jobs: 10 per week', 'kept in the lab: 4 jobs').demand[0]?.arrivals).toEqual({
      kind: 'kept in the lab',
      jobs: 4,
    });
  });

  it('the shortest work may come first, and rush may interrupt', () => {
    const rules = (keys: string) => labOf('name: plain lab', `name: plain lab${keys}`).dispatch;
    expect(rules('\ndispatch: { within: shortest work, rush interrupts: yes }')).toMatchObject({
      within: 'shortest work',
      rushInterrupts: true,
    });
    expect(rules('')).toMatchObject({ within: 'promise', rushInterrupts: false });
  });

  it('people are absent by chance', () => {
    const absence = labOf('count: 2, hours', 'count: 2, absent: 4 % of days, hours').people[0]?.absence;
    expect(absence).toEqual({ chancePerDay: expect.closeTo(0.04, 12), days: { kind: 'fixed', value: 1 } });
    expect(labOf('count: 2, hours', 'count: 2, hours').people[0]).toMatchObject({ absence: null, leave: [] });
  });
});
