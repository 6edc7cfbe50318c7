import { createSimulator, type Simulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { PlayerReply, PlayerTask } from '../shared/messages.ts';
import type { Port } from './port.ts';

/** Labs that are kept: the plan, and the last few that were changed. */
const MOST_KEPT = 4;

/** Plays replications for the director, one after the other. */
export function startPlayer(director: Port<PlayerReply, PlayerTask>): void {
  const labs = new Map<number, Lab>();
  const ready = new Map<number, Simulator>();
  const simulatorOf = (lab: number): Simulator => {
    const known = ready.get(lab);
    if (known !== undefined) return known;
    const data = labs.get(lab);
    if (data === undefined) throw new Error('This lab has been given up.');
    const made = createSimulator(data);
    ready.set(lab, made);
    return made;
  };
  director.onmessage = ({ data }) => {
    if (data.kind === 'lab') {
      labs.set(data.lab, data.data);
      // A map keeps the order of insertion. The first is the plan itself.
      const [, second] = labs.keys();
      if (labs.size > MOST_KEPT && second !== undefined) {
        labs.delete(second);
        ready.delete(second);
      }
      return;
    }
    const { task, lab, settings } = data;
    try {
      director.postMessage({ kind: 'history', task, history: simulatorOf(lab).simulate(settings) });
    } catch (error) {
      director.postMessage({
        kind: 'failed',
        task,
        message: error instanceof Error ? error.message : String(error),
      });
    }
  };
}
