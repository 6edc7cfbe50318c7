import { describe, expect, it } from 'vitest';
import { difference, estimate, shown, targetOf } from '../fixture/plans.ts';
import { type PlanFacts, planHeadline } from './plan-answer-words.ts';

const P90 = 'nine of ten jobs within';
const TARGET = '90 % of jobs within 3 days';
const MISSES = `misses “${TARGET}”`;

function headline(plans: PlanFacts['shown'], more: Partial<PlanFacts> = {}): string[] {
  return planHeadline({
    shown: plans,
    plans: 12,
    undecided: 0,
    leftOut: [],
    closest: null,
    currency: 'EUR',
    ...more,
  });
}

const TODAY = shown('resin 1', 'today', {
  verdict: 'missed',
  why: MISSES,
  committedCost: 100_000,
  targets: [targetOf(TARGET, 0.9, 0.71, 'missed')],
});
const CHOSEN = shown('resin 3', 'chosen', {
  verdict: 'met',
  committedCost: 112_345,
  purchase: 7600,
  targets: [targetOf(TARGET, 0.9, 0.93, 'met')],
});
const NARROW = shown('resin 2', 'near miss', {
  verdict: 'missed',
  why: MISSES,
  committedCost: 106_000,
  targets: [targetOf(TARGET, 0.9, 0.87, 'missed')],
});

function oneMore(group: string, gain: number, outcome: 'better' | 'not told apart', cost: number) {
  return shown(`one more ${group}`, 'one more', {
    why: `one more of “${group}”`,
    committedCost: cost,
    againstChosen: [difference(P90, estimate(-gain, 1), outcome)],
    targets: [targetOf(TARGET, 0.9, 0.8 + gain / 100, 'not tested')],
  });
}

describe('the answer in words', () => {
  it('says the plan, its cost, what it reaches, why not today, why not cheaper, and what most would bring', () => {
    const more = [oneMore('washer', 3, 'better', 112_545), oneMore('resin', 6, 'better', 116_345)];
    expect(headline([CHOSEN, TODAY, NARROW, ...more])).toEqual([
      'Take resin 3: the cheapest of 12 plans that meets every target, at 112\u202f345 EUR a year whatever it makes, 7600 EUR to buy.',
      `With it “${TARGET}”: 93 % (92 to 94).`,
      `Today's plan, resin 1, ${MISSES}: 71 % (70 to 72); the answer costs 12\u202f345 EUR a year more.`,
      `A plan that saves 6345 EUR a year, resin 2, ${MISSES}: 87 % (86 to 88).`,
      'Most would be gained by one more of “resin”: nine of ten jobs 6.0 hours (5.0 to 7.0) sooner, for 4000 EUR more a year.',
    ]);
  });

  it('says what the next cheaper plan misses, however far it is off', () => {
    const below = {
      ...NARROW,
      name: 'resin 2, washer 1',
      role: 'next below' as const,
      committedCost: 112_000,
    };
    expect(headline([CHOSEN, TODAY, NARROW, below])).toContain(
      `A plan that saves 345 EUR a year, resin 2, washer 1, ${MISSES}: 87 % (86 to 88).`,
    );
  });

  it('says to buy nothing where today is the answer', () => {
    const [first, ...others] = headline([{ ...CHOSEN, isToday: true, purchase: 0 }]);
    expect(first).toBe(
      'Buy nothing: what is there today (resin 3) is the cheapest of 12 plans that meets every target, at 112\u202f345 EUR a year whatever it makes, nothing to buy.',
    );
    expect(others.some((words) => words.includes("Today's plan"))).toBe(false);
  });

  it('does not tell of equipment that is there as something to buy', () => {
    const [first] = headline([{ ...CHOSEN, isToday: true }]);
    expect(first).toMatch(
      /whatever it makes, with equipment for 7600 EUR that the scenario does not call owned\.$/,
    );
  });

  it('claims nothing of a target on the cost per part, and says what a piece costs', () => {
    const cost = { name: 'cost of a finished piece', unit: 'money per piece', better: 'lower' } as const;
    const priced = { ...CHOSEN, measures: [{ ...cost, value: estimate(14.5, 0.5) }] };
    const words = headline([priced, TODAY], { leftOut: ['cost per part at most 12 EUR'] });
    expect(words[0]).toContain(
      'the cheapest of 12 plans that meets every target that the search goes by, at',
    );
    expect(words[2]).toBe(
      'The search does not go by “cost per part at most 12 EUR”: with this plan a finished piece costs 14.50\u00a0EUR (14.00 to 15.00).',
    );
  });

  it('speaks of no money where none is stated', () => {
    const plans = [CHOSEN, TODAY, NARROW, oneMore('resin', 6, 'better', 0)];
    const words = headline(
      plans.map((plan) => ({ ...plan, committedCost: null, purchase: null })),
      { currency: null },
    ).join(' ');
    expect(words).not.toMatch(/a year|null|NaN|EUR|money/);
    expect(words).toContain('Take resin 3: the cheapest of 12 plans that meets every target.');
  });

  it('says that today is dearer where it is, and that the answer saves', () => {
    const dear = {
      ...TODAY,
      verdict: 'not tested' as const,
      why: 'is dearer than the answer',
      committedCost: 120_000,
    };
    expect(headline([CHOSEN, dear])).toContain(
      "Today's plan, resin 1, is dearer than the answer; the answer costs 7655 EUR a year less.",
    );
  });

  it('does not claim the cheapest while cheaper plans are open', () => {
    const words = headline([CHOSEN, TODAY], { undecided: 2 });
    expect(words[0]).toContain('the cheapest that could be confirmed of 12 plans');
    expect(words.at(-1)).toBe('2 cheaper plans could neither be ruled out nor confirmed.');
    expect(headline([CHOSEN], { undecided: 1 }).at(-1)).toBe(
      'One cheaper plan could neither be ruled out nor confirmed.',
    );
  });

  it('has no saving to tell of where plans cost the same', () => {
    expect(headline([CHOSEN, { ...NARROW, committedCost: CHOSEN.committedCost }]).join(' ')).not.toContain(
      'saves',
    );
  });

  it('says that nothing more helps where no gain can be told', () => {
    expect(headline([CHOSEN, oneMore('resin', 6, 'not told apart', 116_000)]).at(-1)).toBe(
      'One more of anything that may vary would not make nine of ten jobs noticeably faster.',
    );
  });
});

describe('where no plan meets the targets', () => {
  it('says which target fails, what the best plan reaches, and which range to widen', () => {
    const more = [oneMore('washer', 8, 'better', 0), oneMore('resin', 9, 'better', 0)];
    expect(headline([TODAY, NARROW, ...more], { closest: 'resin 2' })).toEqual([
      'None of 12 plans in the range meets every target.',
      `“${TARGET}” is what fails: the plan that comes closest, resin 2, reaches 87 % (86 to 88).`,
      'Widen the range of “resin” first: one more gives 89 % (88 to 90).',
    ]);
  });

  it('says when one more is still short, and when it hardly helps', () => {
    const best = { ...NARROW, targets: [targetOf(TARGET, 0.99, 0.87, 'missed')] };
    const [, , widen] = headline([best, oneMore('resin', 9, 'better', 0)], { closest: 'resin 2' });
    expect(widen).toBe(
      'Widen the range of “resin” first: one more gives 89 % (88 to 90), which is still short.',
    );
    const [, , nothing] = headline([best, oneMore('resin', 7, 'better', 0)], { closest: 'resin 2' });
    expect(nothing).toBe(
      'One more of anything that may vary hardly helps it: look at the hours, or at the target.',
    );
  });

  it('knows that of being busy less is better', () => {
    const busy = 'people busy at most 80 %';
    const of = (name: string, role: 'near miss' | 'one more', value: number, why: string) =>
      shown(name, role, {
        verdict: role === 'near miss' ? 'missed' : 'not tested',
        why,
        targets: [
          { ...targetOf(busy, 0.8, value, role === 'near miss' ? 'missed' : 'not tested'), better: 'lower' },
        ],
      });
    const people = of('a', 'one more', 0.82, 'one more of “people”');
    const resin = of('b', 'one more', 0.92, 'one more of “resin”');
    const [far, near] = [of('far', 'near miss', 0.97, ''), of('near', 'near miss', 0.9, '')];
    expect(headline([far, near, resin, people], { closest: 'near' }).slice(1)).toEqual([
      `“${busy}” is what fails: the plan that comes closest, near, reaches 90 % (89 to 91).`,
      'Widen the range of “people” first: one more gives 82 % (81 to 83), which is still too much.',
    ]);
    expect(headline([near, resin], { closest: 'near' }).at(-1)).toContain('hardly helps');
  });

  it('names the target that is missed most, also where another was found to be missed first', () => {
    const both = shown('resin 2', 'near miss', {
      verdict: 'missed',
      targets: [
        targetOf(TARGET, 0.9, 0.85, 'missed'),
        targetOf('on time at least 99 %', 0.99, 0.56, 'undecided'),
      ],
    });
    expect(headline([TODAY, both], { closest: 'resin 2' })[1]).toBe(
      '“on time at least 99 %” is what fails: the plan that comes closest, resin 2, reaches 56 % (55 to 57).',
    );
  });

  it('tells plans that are only open from plans that fail', () => {
    expect(headline([TODAY], { undecided: 3 })[0]).toBe(
      'None of 12 plans could be confirmed to meet every target; 3 could not be ruled out either.',
    );
    expect(headline([shown('resin 2', 'undecided')], { undecided: 1 })).toHaveLength(1);
  });
});
