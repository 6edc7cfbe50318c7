/**
 * Times in the system of the jobs that arrive during one stretch of a queue with one server, Poisson arrivals and
 * exponential service of mean 1 (M/M/1), started in equilibrium. They are correlated within the stretch. In the long
 * run they are exponential with mean 1 / (1 − load). Source: L. Kleinrock, Queueing Systems I, section 5.12 (from
 * memory).
 * @param load between 0 and 1
 * @returns ascending
 */
export function timesInSystem(load: number, length: number, draw: () => number): Float64Array {
  const exponential = (mean: number) => -mean * Math.log(draw());
  // Work in the system as an arrival finds it: none with probability 1 − load, else exponential.
  let work = draw() < load ? exponential(1 / (1 - load)) : 0;
  let time = 0;
  const times: number[] = [];
  for (;;) {
    const gap = exponential(1 / load);
    time += gap;
    if (time > length) return Float64Array.from(times).sort();
    work = Math.max(0, work - gap) + exponential(1);
    times.push(work);
  }
}
