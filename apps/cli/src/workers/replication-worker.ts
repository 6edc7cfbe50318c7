import { deserialize } from 'node:v8';
import { createSimulator, type History, type Simulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReplicationTask } from './replication-task.ts';

/** Labs that are kept ready; a search goes on with a few at a time. */
const MOST_READY = 8;

const ready = new Map<number, Simulator>();

/** Plays one replication of a lab, which is made ready when it is new. */
export function play({ lab, bytes, settings }: ReplicationTask): History {
  return simulatorOf(lab, bytes).simulate(settings);
}

function simulatorOf(lab: number, bytes: SharedArrayBuffer): Simulator {
  const known = ready.get(lab);
  // A map keeps the order of insertion: whoever is asked for again goes to its end, and the first is given up.
  ready.delete(lab);
  const simulator = known ?? createSimulator(deserialize(new Uint8Array(bytes)) as Lab);
  ready.set(lab, simulator);
  for (const oldest of ready.keys()) {
    if (ready.size <= MOST_READY) break;
    ready.delete(oldest);
  }
  return simulator;
}
