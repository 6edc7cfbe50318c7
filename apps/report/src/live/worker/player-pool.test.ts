import { hashHistory } from '@buildweek/core';
import { createInProcessExecutor } from '@buildweek/study';
import { expect, test } from 'vitest';
import { SMALL_BASE } from '../fixture/small-base.ts';
import type { PlayerReply, PlayerTask } from '../shared/messages.ts';
import { PlanReader } from '../shared/read-plan.ts';
import { startPlayer } from './player.ts';
import { PlayerPool } from './player-pool.ts';
import type { Port } from './port.ts';

/** Two ends of a channel that hands over copies, a turn of the event loop later, as those of a browser do. */
function channel(): [Port<PlayerTask, PlayerReply>, Port<PlayerReply, PlayerTask>] {
  const one: Port<PlayerTask, PlayerReply> = { postMessage: (task) => deliver(other, task), onmessage: null };
  const other: Port<PlayerReply, PlayerTask> = {
    postMessage: (reply) => deliver(one, reply),
    onmessage: null,
  };
  return [one, other];
}

function deliver<Message>(
  to: { onmessage: ((event: { data: Message }) => void) | null },
  message: Message,
): void {
  const data = structuredClone(message);
  setTimeout(() => to.onmessage?.({ data }));
}

function pool(players: number): PlayerPool {
  return new PlayerPool(
    Array.from({ length: players }, () => {
      const [director, player] = channel();
      startPlayer(player);
      return director;
    }),
  );
}

const { plan } = new PlanReader(SMALL_BASE);
if (plan.kind === 'problems') throw new Error(plan.problems[0]?.message);
const { lab } = plan;
const { seed, weeks, ignoredWeeks, capWeeks } = SMALL_BASE.run;
const template = { seed, weeks, ignoredWeeks, capWeeks, trace: false, queueWaits: false };
const settings = Array.from({ length: 9 }, (_, replication) => ({ ...template, replication }));

test('Players give the records of the same replications as whoever plays them alone.', async () => {
  const found = new Map<number, string>();
  for await (const history of pool(3).run(lab, settings, null)) {
    found.set(history.replication, hashHistory(history));
  }
  const alone = new Map<number, string>();
  for await (const history of createInProcessExecutor().run(lab, settings, null)) {
    alone.set(history.replication, hashHistory(history));
  }
  expect(new Map([...found].sort())).toEqual(alone);
});

test('Whoever is stopped hears no more, and the players go on with what is asked next.', async () => {
  const players = pool(2);
  const stop = new AbortController();
  let heard = 0;
  for await (const _ of players.run(lab, settings, stop.signal)) {
    heard++;
    stop.abort();
  }
  expect(heard).toBe(1);
  let next = 0;
  for await (const _ of players.run(lab, settings, null)) next++;
  expect(next).toBe(settings.length);
});

test('Two who ask at once share the players.', async () => {
  const players = pool(2);
  const order: string[] = [];
  const play = async (name: string): Promise<void> => {
    for await (const _ of players.run(structuredClone(lab), settings, null)) order.push(name);
  };
  await Promise.all([play('one'), play('other')]);
  expect(order.filter((name) => name === 'one')).toHaveLength(settings.length);
  expect(order).toHaveLength(2 * settings.length);
});

test('What goes wrong in a player is told to whoever asked.', async () => {
  const broken = { ...lab, parts: [] };
  await expect(async () => {
    for await (const _ of pool(1).run(broken, settings, null));
  }).rejects.toThrow();
});
