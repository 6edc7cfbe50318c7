import type { History } from '@buildweek/core';

/**
 * Hands on histories in the order of their replications, each as soon as all before it are there. Those that come
 * after a gap which is never filled (somebody stopped) are dropped: which of them were ready then depended on the
 * speed of the workers.
 * @param histories in any order
 * @param first number of the replication that comes first
 */
export async function* inOrder(histories: AsyncIterable<History>, first: number): AsyncGenerator<History> {
  const early = new Map<number, History>();
  let next = first;
  for await (const history of histories) {
    early.set(history.replication, history);
    for (let ready = early.get(next); ready !== undefined; ready = early.get(next)) {
      early.delete(next);
      next++;
      yield ready;
    }
  }
}
