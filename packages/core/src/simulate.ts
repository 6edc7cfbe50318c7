import type { Lab } from '@buildweek/model';
import { Simulation } from './lab/simulation.ts';
import type { History } from './observe/history.ts';
import type { SimulationSettings } from './settings.ts';

/** A lab that has been made ready to be played. */
export interface Simulator {
  /**
   * Plays one replication. The same lab and settings give the same history, whatever was played before.
   *
   * @param settings seed, number of the replication, lengths in weeks, what to keep
   */
  simulate(settings: SimulationSettings): History;
}

/**
 * The one door to the simulator: makes a lab ready, once for any number of replications.
 *
 * @param lab the lab as plain data, as `scenario` gives it
 * @throws Error when the lab contradicts itself (a name that does not resolve, a distribution that is none)
 */
export function createSimulator(lab: Lab): Simulator {
  const simulation = new Simulation(lab);
  return { simulate: (settings) => simulation.play(settings) };
}
