import type { HeldPart } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { type ReplaySaid, replaySentences } from './replay-sentences.ts';

function part(
  name: string,
  more: number,
  outcome: HeldPart['outcome'],
  cause: string | null = null,
): HeldPart {
  const leadTime = { observed: 48 + more, expected: 48, low: 40, high: 56 };
  return { part: name, jobs: 40, leadTime, p90: null, onTime: null, outcome, cause };
}

function said(more: Partial<ReplaySaid> = {}): ReplaySaid {
  const held = { observed: 50, expected: 48, low: 40, high: 56 };
  return {
    test: { falseAlarmRate: 0.05, pValue: 0.12, isContradicted: false, families: [] },
    weeksWithin: { weeks: 15, of: 17, low: 14, high: 17, usual: 0.9 },
    series: [],
    leadTimes: [
      { share: 0.5, ...held },
      { share: 0.9, observed: 120, expected: 118, low: 100, high: 140 },
    ],
    onTime: { observed: 0.91, expected: 0.96, low: 0.83, high: 1 },
    parts: [part('lever', 1, 'as modelled')],
    stages: [],
    wouldSee: [],
    ...more,
  };
}

describe('replaySentences', () => {
  it('gives the verdict, how sure it is, and the figures with what is to be expected', () => {
    expect(replaySentences(said(), 199)).toEqual([
      'What happened lies within what the model expects in 15 of 17 weeks (14 to 17 are to be expected if the model is right).',
      'Nothing in these weeks contradicts the model: of 199 histories that it makes of the same jobs, 23 are at least as unusual as what happened (a model that is right would be called contradicted in at most 5 of 100 such checks).',
      'Half of the jobs took at most 2.1 days (expected 2.0, 1.7 to 2.3); nine of ten at most 5.0 days (expected 4.9, 4.2 to 5.8). On time were 91 %, 96 % expected (83 to 100).',
    ]);
  });

  it('says in what a model is contradicted, the most important first', () => {
    const families = ['a', 'b', 'c', 'd', 'e'].map((what, index) => ({
      what,
      places: 3,
      isLeft: index !== 1,
    }));
    const test = { falseAlarmRate: 0.05, pValue: 0.005, isContradicted: true, families };
    expect(replaySentences(said({ test, onTime: null }), 199)[1]).toBe(
      'What happened contradicts the model: of 199 histories that it makes of the same jobs, none is as unusual (a model that is right would be called contradicted in at most 5 of 100 such checks). What happened leaves the band in 4 of 5 kinds of numbers: a; c; d; and others.',
    );
  });

  it('says what the check would see, where that was asked for', () => {
    const seen = { factor: 1.3, of: 99, low: 0, high: 1 };
    const wouldSee = [
      { what: 'times of hand work', seen: 95, ...seen },
      { what: 'print times', seen: 12, ...seen },
    ];
    expect(replaySentences(said({ wouldSee }), 199).at(-1)).toBe(
      'Of a lab in which something takes 30 % longer than modelled, this check would see it in so many of 100 such logs: times of hand work in 96 and print times in 12.',
    );
  });

  it('names the three parts that differ most, with the cause, and counts the others', () => {
    const parts = [
      part('lever', 10, 'slower'),
      part('ring', -24, 'faster', 'likely cause: waiting before “sand”'),
      part('clip', 3, 'otherwise'),
      part('cap', 0, 'as modelled'),
      part('plate', 2, 'otherwise'),
    ];
    expect(replaySentences(said({ parts }), 199).slice(3)).toEqual([
      'Jobs of “ring” are 1.0 days faster than modelled (1.0 on average, not 2.0); likely cause: waiting before “sand”.',
      'Jobs of “lever” are 0.4 days slower than modelled (2.4 on average, not 2.0).',
      'Jobs of “clip” take as long as modelled on average, but their slowest, or the share that is on time, differ from the model.',
      '1 other part differs from the model too.',
    ]);
  });
});
