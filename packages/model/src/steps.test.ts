import { describe, expect, it } from 'vitest';
import type { PartType } from './demand.ts';
import type { MachineGroup } from './resources.ts';
import type { AttendedWork, Stage } from './stage.ts';
import { stepsOf } from './steps.ts';
import { NO_CONDITIONS } from './trouble.ts';

const hours = { distribution: { kind: 'constant', value: 1 }, typicalHours: 1 } as const;
const hands: AttendedWork = { skill: 'hand work', persons: 1, duration: hours, pausable: false };
const common = {
  level: 'job',
  move: 'per job',
  emptiesCarrier: false,
  maximumWaitHours: null,
  rejects: null,
} as const;

function machine(more: Partial<MachineGroup>): MachineGroup {
  return {
    name: 'resin',
    process: 'VPP',
    count: 1,
    capacity: 1,
    mostJobs: null,
    shaped: null,
    prepare: null,
    setUp: null,
    materialChanges: [],
    warmUp: null,
    firstLayers: null,
    coolDown: null,
    unload: null,
    launch: {
      fullShare: 0,
      waitedHours: null,
      beforeClosing: false,
      fixedHours: null,
      promiseAtRisk: false,
      preferAttendedEnd: false,
    },
    carrier: null,
    initialMaterial: null,
    failure: null,
    ...NO_CONDITIONS,
    ...more,
  };
}

function part(stages: readonly Stage[]): PartType {
  return { name: 'ring', route: 'ring', material: 'grey', settings: '', space: 1, print: null, stages };
}

const build: Stage = { kind: 'build', name: 'build', machineGroup: 'resin', ...common };

describe('stepsOf', () => {
  it('gives the phases of every stage in the order in which they happen, with the stage they belong to', () => {
    const steps = stepsOf(
      part([
        { kind: 'work', name: 'sand', work: hands, basis: 'job', ...common },
        build,
        {
          kind: 'station',
          name: 'wash',
          stationGroup: 'washer',
          load: hands,
          run: hours,
          runAttendance: null,
          basis: 'batch',
          unload: null,
          ...common,
        },
        { kind: 'wait', name: 'dry', duration: hours, requesterChance: null, ...common },
      ]),
      [machine({})],
    );
    expect(steps.map((step) => [step.stageIndex, step.phase, step.attended])).toEqual([
      [0, 'work', true],
      [1, 'set-up', true],
      [1, 'warm-up', false],
      [1, 'print', false],
      [1, 'cool-down', false],
      [1, 'unload', true],
      [2, 'load', true],
      [2, 'run', false],
      [3, 'wait', false],
      [-1, 'outside', false],
    ]);
  });

  it('has steps for preparing a build and for watching its first layers only where the machine asks for them', () => {
    const phases = stepsOf(part([build]), [machine({ prepare: hands, firstLayers: hands })]).map(
      (step) => step.phase,
    );
    expect(phases).toEqual([
      'prepare',
      'set-up',
      'warm-up',
      'first layers',
      'print',
      'cool-down',
      'unload',
      'outside',
    ]);
  });

  it('refuses a build on machines that are not there', () => {
    expect(() => stepsOf(part([build]), [])).toThrow('names no machine group');
  });
});
