import { parentPort } from 'node:worker_threads';
import type { Player } from './suite.ts';
import { SUITES } from './suites/index.ts';

/** What a worker is asked to play. */
export interface Wanted {
  readonly suite: string;
  readonly repetition: number;
}

const players = new Map<string, Player>();

parentPort?.on('message', async ({ suite: name, repetition }: Wanted) => {
  const player = players.get(name) ?? SUITES.find((suite) => suite.name === name)?.createPlayer();
  if (player === undefined) throw new Error(`There is no suite ${name}.`);
  players.set(name, player);
  parentPort?.postMessage(await player.play(repetition));
});
