import type { InitialMachine, Lab, PartType } from '@buildweek/model';
import type { Reading } from '../reading.ts';

/** Rounding that is allowed for, as a share of the capacity: 24 pieces of 1/24 fill a platform. */
const TOLERANCE = 1e-9;

interface Held {
  readonly part: PartType;
  readonly pieces: number;
}

/**
 * Finds machines that hold more at the start than fits in a build. Several part types with shapes are not looked at:
 * that they cannot be packed together is not sure.
 */
export function checkInitialBuilds(lab: Lab, reading: Reading): void {
  for (const machine of lab.initialState.machines) {
    const group = lab.machines.find(({ name }) => name === machine.machine.replace(/ \d+$/, ''));
    const held = heldBy(machine, lab);
    const types = new Set(held.map(({ part }) => part.name));
    if (group === undefined || (group.shaped !== null && types.size > 1)) continue;
    const taken = held.reduce((sum, { part, pieces }) => sum + pieces * part.space, 0);
    if (taken <= group.capacity * (1 + TOLERANCE)) continue;
    const pieces = held.reduce((sum, one) => sum + one.pieces, 0);
    reading.report(['at the start', 'machines', machine.machine], 'key', {
      message: `"${machine.machine}" holds ${pieces} ${pieces === 1 ? 'piece' : 'pieces'} at the start, more than fit in one build.`,
      found: `${machine.machine}, with the jobs that are in it`,
      expected: roomWords(held, group.capacity),
      write: 'fewer pieces at these jobs, or some of the jobs without "in", so that they wait for a build',
    });
  }
}

function heldBy({ jobs }: InitialMachine, lab: Lab): Held[] {
  return jobs.flatMap((index) => {
    const job = lab.initialState.jobs[index];
    const partName = lab.demand.find(({ name }) => name === job?.stream)?.part;
    const part = lab.parts.find(({ name }) => name === partName);
    return job === undefined || part === undefined ? [] : [{ part, pieces: job.quantity }];
  });
}

function roomWords(held: readonly Held[], capacity: number): string {
  const parts = [...new Map(held.map(({ part }) => [part.name, part])).values()];
  return parts
    .map(({ name, space }) => `at most ${Math.floor((capacity / space) * (1 + TOLERANCE))} of "${name}"`)
    .join(', or ');
}
