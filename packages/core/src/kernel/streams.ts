import { Alea } from './alea.ts';

/** A stream of uniform numbers strictly between 0 and 1. */
export type Stream = () => number;

/**
 * One stream for one purpose and one owner in one replication. Streams with different keys are independent,
 * so that an additional machine, a switched-on trace or another number of workers changes no draw.
 *
 * @param seed seed of the study
 * @param replication number of the replication, from 0
 * @param purpose what is drawn, as `arrivals`
 * @param owner name of what it is drawn for, as `lens ring`
 */
export function createStream(seed: string, replication: number, purpose: string, owner: string): Stream {
  // Making a generator ready takes as long as hundreds of draws, and from many streams of a short plan none is made.
  let generator: Alea | null = null;
  return () => {
    // JSON keeps the parts apart whatever characters the names contain.
    generator ??= new Alea(JSON.stringify([seed, replication, purpose, owner]));
    return generator.next();
  };
}
