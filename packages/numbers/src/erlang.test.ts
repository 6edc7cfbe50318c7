import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { erlangB, erlangC } from './erlang.ts';

describe('Erlang B', () => {
  // Source: Erlang loss formula, recomputed from its closed form a^c / c! over the sum of a^k / k!.
  it.each([
    [5, 3, 0.1100543478],
    [10, 7, 0.07874088297],
    [2, 1, 1 / 5],
    [0, 3, 1],
    [4, 0, 0],
  ])('is %s servers, %s erlang: %s', (servers, load, expected) => {
    expect(erlangB(servers, load)).toBeCloseTo(expected, 9);
  });

  it('falls with every server', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.double({ min: 0.01, max: 80, noNaN: true }), (c, a) => {
        expect(erlangB(c + 1, a)).toBeLessThan(erlangB(c, a));
      }),
    );
  });

  it.each([
    [1.5, 1],
    [-1, 1],
    [2, -0.1],
    [2, Number.POSITIVE_INFINITY],
    [2, Number.NaN],
  ])('is refused for %s servers and %s erlang', (servers, load) => {
    expect(() => erlangB(servers, load)).toThrow(RangeError);
  });
});

describe('Erlang C', () => {
  // Source: tables of Erlang C, recomputed; C(3, 2) is the example of Gross and Harris, section 2.3 (from memory).
  it.each([
    [1, 0.5, 0.5],
    [2, 1.5, 0.6428571429],
    [3, 2, 0.4444444444],
    [5, 4, 0.5541125541],
    [4, 3, 0.5094339623],
    [10, 8, 0.4091801508],
    [20, 18, 0.5507690048],
    [100, 95, 0.5064568539],
  ])('is %s servers, %s erlang: %s', (servers, load, expected) => {
    expect(erlangC(servers, load)).toBeCloseTo(expected, 9);
  });

  it('of one server is its utilization', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), (load) => {
        expect(erlangC(1, load)).toBeCloseTo(load, 12);
      }),
    );
  });

  it.each([
    [3, 3],
    [2, 5],
    [0, 0],
    [2, Number.NaN],
  ])('is refused for %s servers and %s erlang', (servers, load) => {
    expect(() => erlangC(servers, load)).toThrow(RangeError);
  });
});
