import { erlangC } from '@buildweek/numbers';

/** A queue in front of like servers: Poisson arrivals, exponential service, first come first served (M/M/c). */
export interface ManyServerQueue {
  /** Customers an hour. */
  readonly arrivalRate: number;
  readonly meanServiceHours: number;
  /** A whole number, at least 1. */
  readonly servers: number;
}

/**
 * Source of all formulas here: D. Gross, J. F. Shortle, J. M. Thompson, C. M. Harris, "Fundamentals of Queueing
 * Theory" (4th ed.), section 2.3 (from memory). Who has to wait, waits exponentially with rate c µ − λ.
 */

/** Mean hours of waiting. @throws RangeError when the servers cannot keep up */
export function meanWait(queue: ManyServerQueue): number {
  return shareThatWaits(queue) / emptyingRate(queue);
}

/** Mean hours of waiting and service. @throws RangeError when the servers cannot keep up */
export function meanSojourn(queue: ManyServerQueue): number {
  return meanWait(queue) + queue.meanServiceHours;
}

/** Share of customers that wait longer than so many hours. */
export function shareWaitingLonger(queue: ManyServerQueue, hours: number): number {
  return shareThatWaits(queue) * Math.exp(-emptyingRate(queue) * hours);
}

/** Hours of waiting that a share of the customers stays below; 0 where fewer have to wait at all. */
export function waitPercentile(queue: ManyServerQueue, share: number): number {
  return Math.max(0, Math.log(shareThatWaits(queue) / (1 - share)) / emptyingRate(queue));
}

/**
 * Share of customers whose waiting and service together take longer. Service and the wait of those who wait are
 * independent exponential times; where their rates agree, their sum is Erlang distributed.
 */
export function shareSojourningLonger(queue: ManyServerQueue, hours: number): number {
  const waits = shareThatWaits(queue);
  const rate = 1 / queue.meanServiceHours;
  const difference = emptyingRate(queue) - rate;
  // (1 − e^(−d t)) / d: its limit t where the two rates agree, and without loss of digits near it.
  const spread = difference === 0 ? hours : -Math.expm1(-difference * hours) / difference;
  return Math.exp(-rate * hours) * (1 + waits * rate * spread);
}

/** Hours of waiting and service that a share of the customers stays below, to 1e-12 of the value. */
export function sojournPercentile(queue: ManyServerQueue, share: number): number {
  let low = 0;
  let high = queue.meanServiceHours;
  while (shareSojourningLonger(queue, high) > 1 - share) high *= 2;
  while (high - low > 1e-12 * high) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (shareSojourningLonger(queue, middle) > 1 - share) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The smallest number of servers with which a share of the customers is served within so many hours.
 * @returns null when service alone takes too long, so that no number is enough
 */
export function fewestServers(
  queue: Omit<ManyServerQueue, 'servers'>,
  share: number,
  withinHours: number,
): number | null {
  // With endless servers nobody waits: then service alone decides.
  if (Math.exp(-withinHours / queue.meanServiceHours) >= 1 - share) return null;
  let servers = Math.floor(queue.arrivalRate * queue.meanServiceHours) + 1;
  while (shareSojourningLonger({ ...queue, servers }, withinHours) > 1 - share) servers++;
  return servers;
}

function shareThatWaits({ arrivalRate, meanServiceHours, servers }: ManyServerQueue): number {
  return erlangC(servers, arrivalRate * meanServiceHours);
}

function emptyingRate({ arrivalRate, meanServiceHours, servers }: ManyServerQueue): number {
  return servers / meanServiceHours - arrivalRate;
}
