import type { Lab, SendOutRule } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generatedLabs } from './fixture/generated-lab.ts';
import {
  constant,
  exponential,
  lab as labOf,
  machine,
  part,
  people,
  station,
  stationStage,
  stream,
} from './fixture/lab.ts';
import { hashHistory } from './observe/hash.ts';
import type { History } from './observe/history.ts';
import type { SimulationSettings } from './settings.ts';
import { createSimulator } from './simulate.ts';

const SETTINGS: SimulationSettings = {
  seed: 'same',
  replication: 5,
  ignoredWeeks: 0,
  weeks: 2,
  capWeeks: 1,
  trace: false,
  queueWaits: false,
};

const PROPERTY = { seed: 20250106, numRuns: 100 };

/** The lab with machines, a station and a person that nobody needs, in front of the others or behind them. */
function withUnused(lab: Lab, inFront: boolean, hours: string): Lab {
  const put = <T>(spare: T, list: readonly T[]): T[] => (inFront ? [spare, ...list] : [...list, spare]);
  return {
    ...lab,
    calendars: [...lab.calendars, { name: 'never', weekly: [], closedDays: [], extra: [] }],
    machines: put(machine('spare machine', { count: 2 }), lab.machines),
    stations: put(station('spare station'), lab.stations),
    people: put(people('spare person', 1, ['nothing'], { calendar: hours }), lab.people),
  };
}

/** The lab with groups of which there is nobody and nothing, in front of the others or behind them. */
function withNone(lab: Lab, inFront: boolean): Lab {
  const spare = withUnused(lab, inFront, 'always');
  const emptied = <Group extends { readonly name: string }>(groups: readonly Group[]): Group[] =>
    groups.map((group) => (group.name.startsWith('spare') ? { ...group, count: 0 } : group));
  return {
    ...spare,
    machines: emptied(spare.machines),
    stations: emptied(spare.stations),
    people: emptied(spare.people),
  };
}

/** The lab with machines and stations to which it is all the same whether somebody is in. */
function monitored(lab: Lab): Lab {
  const alone = { noticing: { kind: 'monitored' }, unattendedHours: null } as const;
  return {
    ...lab,
    machines: lab.machines.map((group) => ({ ...group, ...alone })),
    stations: lab.stations.map((group) => ({ ...group, ...alone })),
  };
}

/** As if somebody were always there. */
function attended(history: History): History {
  return { ...history, machines: history.machines.map((unit) => ({ ...unit, ranAlone: 0 })) };
}

/** The records of a history without those of what nobody needs. */
function withoutUnused(history: History): History {
  return {
    ...history,
    machines: history.machines.filter((unit) => unit.group !== 'spare machine'),
    stations: history.stations.filter((unit) => unit.group !== 'spare station'),
    people: history.people.filter((group) => group.group !== 'spare person'),
    queues: history.queues.filter((queue) => !queue.name.startsWith('spare')),
  };
}

describe('A simulator', () => {
  it('gives the same history for the same settings, whatever it has played before', () => {
    fc.assert(
      fc.property(generatedLabs, (lab) => {
        const simulator = createSimulator(lab);
        const first = hashHistory(simulator.simulate(SETTINGS));
        simulator.simulate({ ...SETTINGS, replication: 6, ignoredWeeks: 1, weeks: 1, capWeeks: 0 });
        simulator.simulate({ ...SETTINGS, seed: 'another', weeks: 3 });
        expect(hashHistory(simulator.simulate(SETTINGS))).toBe(first);
        expect(hashHistory(createSimulator(structuredClone(lab)).simulate(SETTINGS))).toBe(first);
      }),
      PROPERTY,
    );
  });

  it('gives the same history with the trace and without it', () => {
    fc.assert(
      fc.property(generatedLabs, (lab) => {
        const simulator = createSimulator(lab);
        const plain = simulator.simulate(SETTINGS);
        const traced = simulator.simulate({ ...SETTINGS, trace: true });
        expect(plain.trace).toBeNull();
        expect(traced.trace).not.toBeNull();
        expect(hashHistory(traced)).toBe(hashHistory(plain));
      }),
      PROPERTY,
    );
  });

  it('gives the same history with single waits and without them, but for the waits', () => {
    fc.assert(
      fc.property(generatedLabs, (lab) => {
        const simulator = createSimulator(lab);
        const withWaits = simulator.simulate({ ...SETTINGS, queueWaits: true });
        const queues = withWaits.queues.map((queue) => ({ ...queue, waits: null }));
        expect(hashHistory({ ...withWaits, queues })).toBe(hashHistory(simulator.simulate(SETTINGS)));
      }),
      PROPERTY,
    );
  });

  it('changes no other record when a machine and a station are added that nobody needs', () => {
    fc.assert(
      fc.property(generatedLabs, fc.boolean(), (lab, inFront) => {
        const plain = createSimulator(lab).simulate(SETTINGS);
        const larger = createSimulator(withUnused(lab, inFront, 'never')).simulate(SETTINGS);
        expect(larger.machines.length).toBe(plain.machines.length + 2);
        expect(hashHistory(withoutUnused(larger))).toBe(hashHistory(plain));
      }),
      PROPERTY,
    );
  });

  it('changes no other record when a person is added whom nobody needs, unless a machine waits to be noticed: only that machines run alone', () => {
    fc.assert(
      fc.property(generatedLabs, fc.boolean(), (generated, inFront) => {
        const lab = monitored(generated);
        const plain = createSimulator(lab).simulate(SETTINGS);
        const larger = createSimulator(withUnused(lab, inFront, 'always')).simulate(SETTINGS);
        expect(larger.people.length).toBe(plain.people.length + 1);
        expect(larger.machines.every(({ ranAlone }) => ranAlone === 0)).toBe(true);
        expect(hashHistory(attended(withoutUnused(larger)))).toBe(hashHistory(attended(plain)));
      }),
      PROPERTY,
    );
  });

  it('changes no other record when there are groups of machines, stations and people of which it has none', () => {
    fc.assert(
      fc.property(generatedLabs, fc.boolean(), (lab, inFront) => {
        const plain = createSimulator(lab).simulate(SETTINGS);
        const larger = createSimulator(withNone(lab, inFront)).simulate(SETTINGS);
        expect(larger.people.length).toBe(plain.people.length + 1);
        expect(hashHistory(withoutUnused(larger))).toBe(hashHistory(plain));
      }),
      PROPERTY,
    );
  });

  it('changes no record when there is a rule for sending out that never holds', () => {
    const never: SendOutRule = {
      always: false,
      waitingJobsAbove: Number.MAX_SAFE_INTEGER,
      promiseAtRisk: false,
      leadTime: { kind: 'clock', duration: exponential(30) },
    };
    const withRule = (lab: Lab, sentOut: SendOutRule | null): Lab => ({
      ...lab,
      demand: lab.demand.map((one) => ({ ...one, sentOut })),
    });
    fc.assert(
      fc.property(generatedLabs, (lab) => {
        const plain = createSimulator(withRule(lab, null)).simulate(SETTINGS);
        const ruled = createSimulator(withRule(lab, never)).simulate(SETTINGS);
        expect(hashHistory(ruled)).toBe(hashHistory(plain));
      }),
      PROPERTY,
    );
  });

  it('gives a history that can be cloned to another thread', () => {
    fc.assert(
      fc.property(generatedLabs, (lab) => {
        const history = createSimulator(lab).simulate({ ...SETTINGS, trace: true });
        expect(hashHistory(structuredClone(history))).toBe(hashHistory(history));
      }),
      { ...PROPERTY, numRuns: 20 },
    );
  });

  it('plays replications that differ, and seeds that differ', () => {
    const simulator = createSimulator({
      ...withUnused(labOf({}), false, 'never'),
      stations: [station('server')],
      parts: [part('job', [stationStage('serve', 'server', constant(1))])],
      demand: [
        stream('job', {
          arrivals: {
            kind: 'renewal',
            gap: { kind: 'exponential', mean: 2 },
            jobsPerArrival: { kind: 'fixed', value: 1 },
          },
        }),
      ],
    });
    const hash = (more: Partial<SimulationSettings>): string =>
      hashHistory({ ...simulator.simulate({ ...SETTINGS, ...more }), replication: 0 });
    const hashes = [0, 1, 2, 3].map((replication) => hash({ replication }));
    expect(new Set([...hashes, hash({ replication: 0, seed: 'another' })]).size).toBe(5);
  });
});
