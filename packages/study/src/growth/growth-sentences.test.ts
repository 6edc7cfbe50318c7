import type { GrowthAnswer, GrowthMonth, GrowthStep, TargetAtLevel } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { estimate } from '../fixture/plans.ts';
import { growthSentences } from './growth-sentences.ts';
import { monthLabel } from './plan-dates.ts';

const START = '2027-01-04';
const HORIZON = 5;
const WORDING = 'on time at least 90 %';

type Verdict = TargetAtLevel['verdict'];

function month(position: number, verdict: Verdict): GrowthMonth {
  const target: TargetAtLevel = { share: estimate(0.8, 0.02), verdict, confidence: 0.5 };
  return {
    month: position,
    label: monthLabel(START, position),
    demand: 1 + position / 10,
    targets: [target],
  };
}

function months(verdicts: readonly Verdict[], first = 0): GrowthMonth[] {
  return verdicts.map((verdict, index) => month(first + index, verdict));
}

/** One more machine from month 2 on. */
function step(verdicts: readonly Verdict[], holdsUntil: number, more: Partial<GrowthStep> = {}): GrowthStep {
  return {
    name: 'one more resin machine',
    kind: 'machines',
    group: 'resin',
    price: null,
    perYear: null,
    targets: [],
    gain: estimate(0.1),
    restores: 'yes',
    holdsUntil,
    leadWeeks: 4,
    orderBy: '2027-02-01',
    isLate: false,
    overBudget: [],
    months: months(verdicts, 2),
    ...more,
  };
}

function sentences(found: readonly GrowthMonth[], steps: GrowthStep[] = []): string {
  const firstMissed = found.find(({ targets }) => targets[0]?.verdict === 'missed')?.month ?? null;
  const before = found.slice(0, firstMissed ?? found.length);
  const lastMet = before.findLast(({ targets }) => targets[0]?.verdict === 'met')?.month ?? null;
  const [first] = steps;
  const answer: Parameters<typeof growthSentences>[0] = {
    targets: [{ wording: WORDING, asked: 0.9, atMost: false, firstMissed, lastMet }],
    months: [...found],
    horizon: HORIZON,
    neededIn: firstMissed,
    steps,
    purchases: first === undefined ? [] : ([{ ...first, month: 2 }] as GrowthAnswer['purchases']),
  };
  return growthSentences(answer, START, 0.95).join('\n');
}

const MISSED_IN_MARCH = months(['met', 'met', 'missed', 'missed', 'missed', 'missed']);

describe('Growth in sentences', () => {
  it('says until when a target is met, with which confidence, and from when on it is missed', () => {
    const said = sentences(MISSED_IN_MARCH, [step(['met', 'met', 'met', 'met'], HORIZON)]);
    expect(said).toContain(`If nothing is bought, “${WORDING}” is missed from March 2027 on`);
    expect(said).toContain('It is met with 95 % confidence up to February 2027.');
    expect(said).toMatch(
      /One more resin machine restores all targets to the end of what was looked at, June 2027\. /,
    );
  });

  it('does not claim months in which a purchase is not known to be enough', () => {
    const said = sentences(MISSED_IN_MARCH, [step(['met', 'not decided', 'not decided', 'missed'], 4)]);
    expect(said).toContain(
      'restores all targets until May 2027, though from April 2027 on that is not decided at this precision.',
    );
  });

  it('calls a purchase that is not known to be enough in its first month possible, not probable', () => {
    const open = step(['not decided', 'missed'], 2, { restores: 'not decided' });
    const said = sentences(MISSED_IN_MARCH, [open]);
    expect(said).toContain('may restore all targets (not decided at this precision) until March 2027');
    expect(said).not.toContain('probably');
  });

  it('says of months in which nothing is decided that nothing is missed clearly', () => {
    const said = sentences(
      months(['met', 'met', 'not decided', 'not decided', 'not decided', 'not decided']),
    );
    expect(said).toMatch(
      /no target is clearly missed up to June 2027, .*; from March 2027 on it is not decided/,
    );
  });
});
