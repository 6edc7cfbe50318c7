import { parentPort } from 'node:worker_threads';
import { Player } from './player.ts';
import { SUITES } from './suites/index.ts';

/** What a worker is asked to play. */
export interface Wanted {
  readonly suite: string;
  readonly repetition: number;
}

const players = new Map(SUITES.map((suite) => [suite.name, new Player(suite)]));

parentPort?.on('message', async ({ suite, repetition }: Wanted) => {
  parentPort?.postMessage(await players.get(suite)?.play(repetition));
});
