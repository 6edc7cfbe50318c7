import { createSimulator, type History, type SimulationSettings } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { workerData } from 'piscina';

const simulator = createSimulator(workerData as Lab);

/** Plays one replication of the lab that this worker was started with. */
export function play(settings: SimulationSettings): History {
  return simulator.simulate(settings);
}
