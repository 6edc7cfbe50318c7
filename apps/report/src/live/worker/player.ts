import { createSimulator, type Simulator } from '@buildweek/core';
import type { PlayerReply, PlayerTask } from '../shared/messages.ts';
import type { Port } from './port.ts';

/** Labs that are kept ready: the plan, and the last few that were changed. */
const MOST_READY = 4;

/** Plays replications for the director, one after the other. */
export function startPlayer(director: Port<PlayerReply, PlayerTask>): void {
  const ready = new Map<number, Simulator>();
  director.onmessage = ({ data }) => {
    if (data.kind === 'lab') {
      ready.set(data.lab, createSimulator(data.data));
      // A map keeps the order of insertion. The first is the plan itself.
      const [, second] = ready.keys();
      if (ready.size > MOST_READY && second !== undefined) ready.delete(second);
      return;
    }
    const { task, lab, settings } = data;
    try {
      const simulator = ready.get(lab);
      if (simulator === undefined) throw new Error('This lab has been given up.');
      director.postMessage({ kind: 'history', task, history: simulator.simulate(settings) });
    } catch (error) {
      director.postMessage({
        kind: 'failed',
        task,
        message: error instanceof Error ? error.message : String(error),
      });
    }
  };
}
