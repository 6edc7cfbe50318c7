import type { Doubt } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { attended, bench, lab, part, people, queueLab } from '../../fixture/lab.ts';
import { awayByHand } from './away-by-hand.ts';
import { doubtsByHand } from './doubts-by-hand.ts';
import { growthByHand } from './growth-by-hand.ts';

const WEEKS = 13;
/** One server day and night: 10.5 jobs of 8 hours in 168 hours are a load of one half. */
const HALF_LOADED = { ...queueLab(10.5, 8), startDate: '2027-03-01' };

describe('what arithmetic says of growth', () => {
  it('is the month in which the highest load passes 85 and 100 per cent, and the time of one server', () => {
    // 0.5 × 1.1^6 = 0.886 and 0.5 × 1.1^8 = 1.072; M/M/1 takes 8 h / (1 − 0.5) = 16 h, and has no mean at a load above 1.
    const [first, second, third] = growthByHand(HALF_LOADED, 0.1, 12, WEEKS);
    expect(first).toContain("with 50 % of the hours there at today's demand");
    expect(first).toContain('in March 2028 it would be');
    expect(second).toContain('85 %, from where on waiting grows fast, in September 2027');
    expect(second).toContain('100 %, more than there are hours, in November 2027');
    expect(third).toContain("is 0.7 days at today's demand and without end in March 2028");
  });

  it('says that a lab stays comfortable', () => {
    expect(growthByHand(HALF_LOADED, 0.01, 6, WEEKS)[1]).toContain('stays below 85 %');
  });
});

describe('what arithmetic says of doubts', () => {
  const doubt = (name: string, about: Doubt['about'], low: number, high: number): Doubt => ({
    name,
    about,
    low,
    typical: 1,
    high,
  });

  it('is what moves the highest load most, and what it cannot see', () => {
    const words = doubtsByHand(
      HALF_LOADED,
      [
        doubt('share of rush', { kind: 'share of rush', of: null }, 0.5, 2),
        doubt('demand', { kind: 'demand', of: null }, 0.8, 1.3),
      ],
      WEEKS,
    );
    expect(words[0]).toContain(
      '“demand” moves the highest load most: 40 % at 80 % of what is stated, 65 % at 130 %.',
    );
    expect(words[1]).toContain('“share of rush” does not move the highest load');
  });
});

describe('what arithmetic says of somebody away', () => {
  const crew = (jobsPerWeek: number) =>
    lab(
      {
        people: [people('hands', 2, ['sand'], { calendar: 'always' })],
        parts: [part('sign', [bench('sand', attended('sand', 10))])],
      },
      jobsPerWeek,
    );

  it('is that what is left is enough, or what piles up and in how many weeks it is cleared', () => {
    // Two people day and night are there for 336 h a week; 25.2 jobs of 10 h ask for 252 h.
    const [words] = awayByHand(crew(25.2), ['hands'], 2, WEEKS);
    expect(words).toContain('asked for 252 h of the 336 h a week');
    // 168 h are left: 84 h pile up in each of two weeks, and 84 h a week to spare take two weeks.
    expect(words).toContain(
      '168 h are left, so that 168 h of work pile up, which 84 h a week to spare clear in 2.0 weeks',
    );
    expect(awayByHand(crew(10), ['hands'], 2, WEEKS)[0]).toContain('168 h are left, which is enough');
  });
});
