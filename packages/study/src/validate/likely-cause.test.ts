import type { HeldPart, HeldStage } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { likelyCause, workSentences } from './likely-cause.ts';

const SLOWER: Omit<HeldPart, 'cause'> = {
  part: 'lever',
  jobs: 50,
  leadTime: { observed: 70, expected: 50, low: 40, high: 60 },
  p90: null,
  onTime: null,
  outcome: 'slower',
};

function stage(
  name: string,
  what: HeldStage['what'],
  observed: number,
  expected: number,
  more = {},
): HeldStage {
  return {
    part: 'lever',
    stage: name,
    logged: name,
    what,
    jobs: 50,
    observed,
    expected,
    usualLow: expected - 1,
    usualHigh: expected + 1,
    standsOut: false,
    ...more,
  };
}

describe('likelyCause', () => {
  it('names the stretch that is slower by most', () => {
    const stages = [
      stage('build', 'waiting before', 12, 9),
      stage('remove supports', 'waiting before', 21.3, 4),
      stage('inspect', 'up to its end', 2, 3),
    ];
    expect(likelyCause(SLOWER, stages)).toBe(
      'likely cause: waiting before “remove supports” (21.3 h on average, not 4.0 h)',
    );
  });

  it('names what is faster for a part that is faster', () => {
    const faster = { ...SLOWER, outcome: 'faster' as const, leadTime: { ...SLOWER.leadTime, observed: 30 } };
    const stages = [stage('build', 'at the stage', 8, 26), stage('sand', 'waiting before', 9, 2)];
    expect(likelyCause(faster, stages)).toContain('the time at “build” (8.0 h on average, not 26.0 h)');
  });

  it('says that no stage stands out where all are as usual, or make little of it', () => {
    const words = 'no stage of which the log has times stands out';
    expect(likelyCause(SLOWER, [stage('build', 'waiting before', 29, 10, { usualHigh: 40 })])).toBe(words);
    expect(likelyCause(SLOWER, [stage('build', 'waiting before', 14, 10)])).toBe(words);
  });

  it('says that the log does not tell where it has no times of stages', () => {
    expect(likelyCause(SLOWER, [{ ...stage('build', 'at the stage', 9, 1), part: 'ring' }])).toContain(
      'the log does not tell',
    );
  });

  it('explains nothing where there is nothing to explain', () => {
    const same = { ...SLOWER, outcome: 'as modelled' as const };
    expect(likelyCause(same, [stage('build', 'at the stage', 9, 1)])).toBeNull();
  });
});

describe('workSentences', () => {
  it('says of work that stands out how much longer it takes', () => {
    const stages = [
      stage('sand', 'work', 0.169, 0.13, { standsOut: true }),
      stage('sand', 'work', 0.2, 0.13),
      stage('sand', 'work', 0.131, 0.13, { standsOut: true }),
      stage('inspect', 'work', 1.5, 2, { standsOut: true }),
    ];
    expect(workSentences(stages)).toEqual([
      'Beside the check: work at “sand” of “lever” takes 30 % longer than modelled (0.17 h on average, not 0.13 h).',
      'Beside the check: work at “inspect” of “lever” takes 25 % less long than modelled (1.5 h on average, not 2.0 h).',
    ]);
  });
});
