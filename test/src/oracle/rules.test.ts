import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import * as rules from './rules.ts';
import { tinyLab } from './tiny-lab.ts';

const LABS = fc.sample(tinyLab, { seed: 17, numRuns: 400 });

/** Every rule once as it is not: what is said here replaces it. */
const MISTAKES: readonly (readonly [string, Partial<typeof rules>])[] = [
  ['running hours pass in set-up', { agesIn: (phase) => phase === 'set-up' || rules.agesIn(phase) }],
  ['running hours pass in print alone', { agesIn: (phase) => phase === 'print' }],
  ['a breakdown spares every build', { losesBuild: () => false }],
  [
    'a breakdown loses a build in warm-up',
    {
      losesBuild: (unit, phase, effect) =>
        (phase === 'warm-up' && effect === 'loses the build') || rules.losesBuild(unit, phase, effect),
    },
  ],
  [
    'a breakdown loses a finished build',
    {
      losesBuild: (unit, phase, effect) =>
        (phase === 'cool-down' && effect === 'loses the build') || rules.losesBuild(unit, phase, effect),
    },
  ],
  [
    'a set-up goes on where a breakdown stopped it',
    {
      leftAfterRepair: (phase, isAttended, effect, length, done) =>
        rules.leftAfterRepair(phase, isAttended && phase !== 'set-up', effect, length, done),
    },
  ],
  [
    'a print starts again after a repair',
    { leftAfterRepair: (_phase, _isAttended, _effect, length) => length },
  ],
  ['who is at a machine does not see it stop', { isNoticedAtOnce: () => false }],
  ['everything is noticed at once', { isNoticedNow: () => true }],
  [
    'nobody makes rounds',
    {
      isNoticedNow: (floor, noticing) =>
        rules.isNoticedNow(floor, noticing.kind === 'rounds' ? { kind: 'on arrival' } : noticing),
    },
  ],
  [
    'who comes does not look',
    {
      isNoticedNow: (floor, noticing) =>
        rules.isNoticedNow(
          floor,
          noticing.kind === 'on arrival' ? { kind: 'when somebody is in' } : noticing,
        ),
    },
  ],
  [
    'a repair is no more urgent than a chore',
    { rankOfUpkeep: (upkeep) => ({ ...rules.rankOfUpkeep(upkeep), rush: 1 }) },
  ],
  ['a chore goes before rush', { rankOfUpkeep: (upkeep) => ({ ...rules.rankOfUpkeep(upkeep), rush: -1 }) }],
  ['upkeep is bench work', { kindOfUpkeep: () => 'bench' }],
  ['a service works day and night', { serviceIsOpen: () => true }],
  ['everything may run alone', { mayRunAlone: () => true }],
  [
    'permission is needed for a quarter of an hour only',
    {
      mayRunAlone: (floor, unit, from, length) => rules.mayRunAlone(floor, unit, from, Math.min(15, length)),
    },
  ],
  ['rush interrupts nothing', { mayBeInterrupted: () => false }],
  [
    'rush interrupts work that may not pause',
    {
      mayBeInterrupted: (floor, task, rank) =>
        rules.mayBeInterrupted(floor, { ...task, mayPause: true }, rank),
    },
  ],
];

describe('the rules of the oracle', () => {
  afterEach(() => {
    vi.doUnmock('./rules.ts');
    vi.resetModules();
  });

  it.each(MISTAKES)(
    'are noticed to be broken when %s',
    async (_words, mistake) => {
      vi.resetModules();
      vi.doMock('./rules.ts', () => ({ ...rules, ...mistake }));
      const { disagreementOn } = await import('./comparison.ts');
      expect(LABS.some((lab) => disagreementOn(lab) !== null)).toBe(true);
    },
    120_000,
  );
});
