import { createSimulator, type History, MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Duration, Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { randomLab } from './random-lab.ts';
import { stateAt } from './state-of-history.ts';

const SETTINGS = {
  seed: 'state',
  replication: 0,
  ignoredWeeks: 0,
  weeks: 1,
  capWeeks: 9,
  trace: true,
  queueWaits: false,
};
const WEEKS = 3;
const AT = WEEKS * MILLISECONDS_PER_WEEK;

/** The lab with nothing left to chance but when jobs come, and with none that come from the moment on. */
function withoutChance(lab: Lab): Lab {
  const constant = ({ typicalHours }: Duration): Duration => ({
    distribution: { kind: 'constant', value: typicalHours },
    typicalHours,
  });
  const replaced = JSON.parse(JSON.stringify(lab), (_, value) =>
    value !== null && typeof value === 'object' && 'typicalHours' in value && 'distribution' in value
      ? constant(value as Duration)
      : value,
  ) as Lab;
  return {
    ...replaced,
    demand: replaced.demand.map((stream, index) => ({
      ...stream,
      arrivals: index === 0 ? { kind: 'dated', jobs: crowdedWeeks(lab) } : stream.arrivals,
    })),
  };
}

/** Jobs at odd moments of the weeks before, more in the last days. */
function crowdedWeeks(lab: Lab) {
  const arrivals = lab.demand[0]?.arrivals;
  const perWeek = arrivals?.kind === 'poisson' ? arrivals.perWeek : 0;
  const count = Math.ceil(perWeek * WEEKS);
  return Array.from({ length: count }, (_, index) => ({
    atHour: ((index + 0.37) / count) ** 0.8 * (WEEKS * 168 - 10),
    quantity: 1 + (index % 4),
    rush: index % 7 === 0,
  }));
}

function endings({ trace }: History): Map<number, number> {
  return new Map((trace ?? []).flatMap(({ what, job, time }) => (what === 'job ends' ? [[job, time]] : [])));
}

describe('What stands in a lab at midnight, taken from its history', () => {
  it('goes on as the history did, where nothing is left to chance', () => {
    let compared = 0;
    let inMachines = 0;
    let putDown = 0;
    for (let number = 0; number < 40; number++) {
      const lab = withoutChance(randomLab(`state ${number}`).lab);
      const history = createSimulator(lab).simulate({ ...SETTINGS, weeks: WEEKS + 1 });
      const state = stateAt(lab, history.trace ?? [], AT);
      const nothing = lab.demand.map((stream) => ({
        ...stream,
        arrivals: { kind: 'dated' as const, jobs: [] },
      }));
      const goesOn = createSimulator({ ...lab, demand: nothing, initialState: state }).simulate({
        ...SETTINGS,
        weeks: 6,
      });
      const after = endings(goesOn);
      const before = [...endings(history)].filter(([, time]) => time > AT).sort(([a], [b]) => a - b);
      expect(before.map(([, time]) => time - AT)).toEqual(before.map((_, index) => after.get(index)));
      compared += before.length;
      inMachines += state.machines.length;
      putDown += state.jobs.filter(({ remainingHours }) => remainingHours !== null).length;
    }
    // Something of each kind was there to be compared.
    expect(compared).toBeGreaterThan(100);
    expect(inMachines).toBeGreaterThan(10);
    expect(putDown).toBeGreaterThan(5);
  });

  it('counts its hours from that moment', () => {
    const { lab } = randomLab('hours');
    const { trace } = createSimulator(lab).simulate({ ...SETTINGS, weeks: WEEKS + 1 });
    const { jobs } = stateAt(lab, trace ?? [], AT);
    expect(jobs.length).toBeGreaterThan(0);
    for (const job of jobs) {
      expect(job.arrivedAtHour).toBeLessThan(0);
      expect(job.arrivedAtHour).toBeGreaterThan(-AT / MILLISECONDS_PER_HOUR);
    }
  });
});
