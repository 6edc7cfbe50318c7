/**
 * Erlang B: share of customers that find all servers busy and go away, in M/G/c/c.
 * Recursion B(0) = 1, B(c) = a B(c − 1) / (c + a B(c − 1)), which stays exact for any number of servers.
 * Source: D. Gross, J. F. Shortle, J. M. Thompson, C. M. Harris, "Fundamentals of Queueing Theory" (4th ed.), chapter 2
 * (from memory).
 * @param servers a whole number of at least 0
 * @param offeredLoad arrival rate times mean service time (erlang), at least 0
 * @throws RangeError for anything else
 */
export function erlangB(servers: number, offeredLoad: number): number {
  if (
    !(Number.isInteger(servers) && servers >= 0 && offeredLoad >= 0 && offeredLoad < Number.POSITIVE_INFINITY)
  ) {
    throw new RangeError(`Erlang B is not defined for ${servers} servers and a load of ${offeredLoad}.`);
  }
  let blocked = 1;
  for (let server = 1; server <= servers; server++) {
    blocked = (offeredLoad * blocked) / (server + offeredLoad * blocked);
  }
  return blocked;
}

/**
 * Erlang C: share of customers that have to wait, in M/M/c. From Erlang B: C = B / (1 − u (1 − B)) with the
 * utilization u = a / c. Source as for {@link erlangB}.
 * @param servers a whole number of at least 1
 * @param offeredLoad arrival rate times mean service time (erlang), at least 0 and below the number of servers
 * @throws RangeError for anything else
 */
export function erlangC(servers: number, offeredLoad: number): number {
  if (!(servers >= 1 && offeredLoad < servers)) {
    throw new RangeError(
      `Erlang C is defined for a load below the number of servers, not for ${offeredLoad} on ${servers}.`,
    );
  }
  const blocked = erlangB(servers, offeredLoad);
  return blocked / (1 - (offeredLoad / servers) * (1 - blocked));
}
