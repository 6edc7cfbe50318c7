import { describe, expect, test } from 'vitest';
import { meanLeadTime, type Tandem, waiting } from './erlang-tandem.ts';
import { LeadTimeLaw } from './lead-time-law.ts';

/** Chance that a sum of independent exponential times with these rates, all different, takes longer. */
function sumBeyond(rates: readonly number[], hours: number): number {
  let total = 0;
  rates.forEach((rate, index) => {
    const others = rates.filter((_, position) => position !== index);
    total += others.reduce((factor, other) => (factor * other) / (other - rate), Math.exp(-rate * hours));
  });
  return total;
}

/** As if the times at the two stations were independent, which they are behind a lone server. */
function beyondIfIndependent({ arrivalRate, service, servers }: Tandem, hours: number): number {
  const [first, second] = [0, 1].map((station) =>
    waiting(arrivalRate, service[station] as number, servers[station] as number),
  ) as [ReturnType<typeof waiting>, ReturnType<typeof waiting>];
  let total = 0;
  for (const own of [true, false]) {
    for (const other of [true, false]) {
      const rates = [
        ...service.map((mean) => 1 / mean),
        ...(own ? [first.rate] : []),
        ...(other ? [second.rate] : []),
      ];
      const chance = (own ? first.chance : 1 - first.chance) * (other ? second.chance : 1 - second.chance);
      total += chance * sumBeyond(rates, hours);
    }
  }
  return total;
}

/** By the trapezoidal rule in small steps. */
function integral(f: (x: number) => number, to: number, steps: number): number {
  let total = (f(0) + f(to)) / 2;
  for (let step = 1; step < steps; step++) total += f((to * step) / steps);
  return (total * to) / steps;
}

describe('two stations in a row', () => {
  // Source: Burke 1956, Reich 1957 (closed form): two lone servers in a row at 0.8 an hour with 1 h and 48 min: 7.2222 h
  // on average, and 0.8403209488 within 12 h.
  test('agree with the published case of lone servers', () => {
    const tandem: Tandem = { arrivalRate: 0.8, service: [1, 0.8], servers: [1, 1] };
    expect(meanLeadTime(tandem)).toBeCloseTo(7.2222222222, 9);
    expect(1 - beyondIfIndependent({ ...tandem, service: [1, 0.8 + 1e-9] }, 12)).toBeCloseTo(0.8403209488, 5);
    expect(1 - new LeadTimeLaw(tandem, 12).shareBeyond(12)).toBeCloseTo(0.8403209488, 5);
  });

  // Source: tables of Erlang C: with 3 servers and a load of 2 an arrival waits with the chance 4/9.
  test('wait at the first as the formula of Erlang says', () => {
    const tandem: Tandem = { arrivalRate: 2, service: [1, 1e-3], servers: [3, 1] };
    // 4/9 / (3 − 2) + 1 h, and next to nothing at the second.
    expect(meanLeadTime(tandem)).toBeCloseTo(4 / 9 + 1 + 1e-3 + 1e-3 * (0.002 / 0.998), 9);
  });

  // Source: P. J. Burke, "The output process of a stationary M/M/s queueing system", Annals of Mathematical Statistics 39
  // (1968), 1144–1152, for the independence behind a lone server (from memory).
  test('have independent times where the first has one server', () => {
    const tandem: Tandem = { arrivalRate: 0.5, service: [1.1, 3.1], servers: [1, 3] };
    const law = new LeadTimeLaw(tandem, 30);
    for (const hours of [1, 5, 10, 20, 30]) {
      expect(law.shareBeyond(hours)).toBeCloseTo(beyondIfIndependent(tandem, hours), 5);
    }
  });

  test('have lead times whose law adds up to the mean, with shorter tails than independent times', () => {
    for (const [arrivalRate, servers] of [
      [0.9, [2, 3]],
      [1.5, [5, 5]],
    ] as const) {
      const tandem: Tandem = { arrivalRate, service: [1.7, 2.1], servers };
      const law = new LeadTimeLaw(tandem, 40);
      expect(law.shareBeyond(0)).toBeCloseTo(1, 5);
      expect(integral((hours) => law.shareBeyond(hours), 40, 800)).toBeCloseTo(meanLeadTime(tandem), 2);
      expect(law.shareBeyond(11)).toBeLessThan(beyondIfIndependent(tandem, 11) - 1e-4);
    }
  });

  test('are refused where the work exceeds the servers', () => {
    expect(() => meanLeadTime({ arrivalRate: 2, service: [1, 1], servers: [2, 3] })).toThrow('cannot do');
  });
});
