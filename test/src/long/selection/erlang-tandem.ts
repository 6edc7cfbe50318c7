/**
 * Two stations in a row, each with several equal servers, Poisson arrivals and exponential service (M/M/c to M/M/c),
 * first come, first served.
 */
export interface Tandem {
  /** Jobs an hour. */
  readonly arrivalRate: number;
  /** Mean service times, hours. */
  readonly service: readonly [number, number];
  readonly servers: readonly [number, number];
}

/** Chance that an arrival at one station has to wait, and the rate at which its wait then ends, an hour. */
export interface Waiting {
  readonly chance: number;
  readonly rate: number;
}

/**
 * A station of its own in the long run, by the formula of Erlang (Erlang C). Source: Gross, Shortle, Thompson & Harris,
 * Fundamentals of Queueing Theory, 4th edition, section 2.3 (from memory).
 *
 * @throws RangeError when the work exceeds the servers
 */
export function waiting(arrivalRate: number, service: number, servers: number): Waiting {
  const load = arrivalRate * service;
  if (!(load < servers)) throw new RangeError(`${servers} servers cannot do the work of ${load}.`);
  // Erlang B by its recursion, and C from it.
  let blocked = 1;
  for (let count = 1; count <= servers; count++) blocked = (load * blocked) / (count + load * blocked);
  const use = load / servers;
  return { chance: blocked / (1 - use * (1 - blocked)), rate: servers / service - arrivalRate };
}

/**
 * Mean time of a job from arrival to its end at the second station, hours. What leaves the first station is Poisson
 * again, so that each is an Erlang C station: P. J. Burke, "The output of a queuing system", Operations Research 4
 * (1956), 699–704.
 */
export function meanLeadTime({ arrivalRate, service, servers }: Tandem): number {
  const first = waiting(arrivalRate, service[0], servers[0]);
  const second = waiting(arrivalRate, service[1], servers[1]);
  return first.chance / first.rate + service[0] + second.chance / second.rate + service[1];
}
