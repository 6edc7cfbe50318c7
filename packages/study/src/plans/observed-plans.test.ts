import { describe, expect, it } from 'vitest';
import { machine, queueLab } from '../fixture/lab.ts';
import { createInProcessExecutor } from '../in-process-executor.ts';
import { measureDifference, measureEstimate } from './measure-estimates.ts';
import { type Observation, type ObservationJournal, ObservedPlans } from './observed-plans.ts';
import type { Plan } from './plan.ts';
import { standardMeasures } from './standard-measures.ts';

const template = { seed: '1', ignoredWeeks: 2, weeks: 4, capWeeks: 4, trace: false, queueWaits: false };
const slow: Plan = { name: 'slow', lab: queueLab(10, 8) };
const fast: Plan = { name: 'fast', lab: queueLab(10, 7) };

class Notes implements ObservationJournal {
  readonly kept = new Map<string, Observation>();
  read(plan: string, replication: number): Observation | null {
    return this.kept.get(`${plan} ${replication}`) ?? null;
  }
  write(plan: string, replication: number, observation: Observation): void {
    this.kept.set(`${plan} ${replication}`, observation);
  }
}

function observed(more: Partial<ConstructorParameters<typeof ObservedPlans>[0]> = {}): ObservedPlans {
  return new ObservedPlans({
    measures: (lab) => standardMeasures([lab]),
    template,
    executor: createInProcessExecutor(),
    ...more,
  });
}

describe('observed plans', () => {
  it('are played once, however often they are asked for', async () => {
    let played = 0;
    const plans = observed({
      onReplication: () => {
        played++;
      },
    });
    const first = await plans.observe(slow, 3);
    const more = await plans.observe(slow, 5);
    expect(more?.slice(0, 3)).toEqual(first);
    expect([played, plans.replications]).toEqual([5, 5]);
  });

  it('are refused when their measures are others, for values are found by place', async () => {
    const plans = observed();
    await plans.observe(slow, 1);
    const helped: Plan = { name: 'helped', lab: { ...slow.lab, machines: [machine('resin')] } };
    await expect(plans.observe(helped, 1)).rejects.toThrow('“helped” has other measures');
  });

  it('go on from a journal as if nobody had stopped', async () => {
    const whole = await observed().observe(slow, 6);
    const journal = new Notes();
    const controller = new AbortController();
    const stopped = observed({
      journal,
      stop: controller.signal,
      onReplication: () => {
        if (journal.kept.size === 3) controller.abort();
      },
    });
    expect(await stopped.observe(slow, 6)).toBeNull();
    expect(journal.kept.size).toBe(3);
    let read = 0;
    const goesOn = observed({
      journal: {
        read: (plan, replication) => {
          const kept = journal.read(plan, replication);
          if (kept !== null) read++;
          return kept;
        },
        write: () => {},
      },
    });
    expect(await goesOn.observe(slow, 6)).toEqual(whole);
    expect(read).toBe(3);
  });

  it('are compared on common random numbers, which makes differences sharper', async () => {
    const plans = observed();
    const before = (await plans.observe(slow, 30)) ?? [];
    const after = (await plans.observe(fast, 30)) ?? [];
    const index = plans.measuresOf(slow).findIndex(({ name }) => name === 'mean lead time');
    const own = measureEstimate(before, index, 0.95);
    const { difference, paired } = measureDifference(before, after, index, 0.95);
    if (own.kind !== 'estimate' || difference.kind !== 'estimate') throw new Error('no estimate');
    expect(difference.high).toBeLessThan(0);
    expect(difference.high - difference.low).toBeLessThan(own.high - own.low);
    expect(paired?.varianceReduction).toBeGreaterThan(3);
  });

  it('never say of a share that it may lie above 1, nor of hours that they may lie below 0', () => {
    const nearlyAll = Array.from({ length: 20 }, (_, index) => Float64Array.of(index === 0 ? 1 : 2, 2));
    const nearlyNone = Array.from({ length: 20 }, (_, index) => Float64Array.of(index === 0 ? 3 : 0, 1));
    expect(measureEstimate(nearlyAll, 0, 0.95, 1)).toMatchObject({ value: 39 / 40, high: 1 });
    expect(measureEstimate(nearlyNone, 0, 0.95)).toMatchObject({ value: 3 / 20, low: 0 });
  });
});
