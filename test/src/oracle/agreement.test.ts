import type { Lab } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { disagreementOn } from './comparison.ts';
import { playMinuteByMinute } from './oracle.ts';
import { tinyLab } from './tiny-lab.ts';

// `npm run test:long` plays ten thousand labs of another seed.
const LABS = Number(process.env.BUILDWEEK_ORACLE_LABS ?? 300);
const SEED = LABS > 300 ? 41 : 20261125;

/** Whether a build that waits for the last call may need another material: the two time that moment differently. */
function changesAtLastCall(lab: Lab): boolean {
  return lab.machines.some((group) => group.launch.beforeClosing && group.materialChanges.length > 0);
}

describe('the oracle and the simulator', () => {
  it('play generated tiny labs alike, event by event', () => {
    fc.assert(
      fc.property(
        tinyLab.filter((lab) => !changesAtLastCall(lab)),
        (lab) => {
          const found = disagreementOn(lab);
          if (found === null) return;
          const timelines = `oracle:\n${found.oracle.join('\n')}\nsimulator:\n${found.simulator.join('\n')}`;
          throw new Error(timelines);
        },
      ),
      { seed: SEED, numRuns: LABS },
    );
  }, 3_600_000);

  it('are compared on most of what happens: few labs come to a moment that the rules leave open', () => {
    const labs = fc.sample(tinyLab, { seed: SEED, numRuns: 200 });
    const parts = labs.map((lab) => {
      const { events, undecidedAt } = playMinuteByMinute(lab, 3);
      const compared = events.filter((event) => undecidedAt === null || event.time < undecidedAt);
      return { all: events.length, compared: compared.length };
    });
    const sum = (key: 'all' | 'compared'): number => parts.reduce((total, part) => total + part[key], 0);
    expect(sum('compared') / sum('all')).toBeGreaterThan(0.85);
  }, 180_000);

  it('are told apart when one of them is given another lab', () => {
    // Jobs that come a minute later for one of the two must be noticed, or the comparison says nothing.
    const labs = fc.sample(tinyLab, { seed: SEED, numRuns: 20 });
    for (const lab of labs) {
      const later = lab.demand.map((stream) => {
        if (stream.arrivals.kind !== 'dated') return stream;
        const jobs = stream.arrivals.jobs.map((job) => ({ ...job, atHour: job.atHour + 1 / 60 }));
        return { ...stream, arrivals: { ...stream.arrivals, jobs } };
      });
      expect(disagreementOn(lab, { ...lab, demand: later })).not.toBeNull();
    }
  }, 180_000);
});
