import { parentPort, workerData } from 'node:worker_threads';
import { createSimulator } from '../src/simulate.ts';
import { settingsFor } from './lab-model.ts';

// Plays as many replications of the lab it was given as it is told and answers when they are done.

const simulator = createSimulator(workerData);
parentPort?.on('message', (replications: number) => {
  for (let replication = 0; replication < replications; replication++) {
    simulator.simulate(settingsFor(13, 'threads', replication));
  }
  parentPort?.postMessage(replications);
});
