import { learnedFixture } from '@buildweek/charts/learned-fixture';
import { describe, expect, test } from 'vitest';
import { withoutData } from './fixture/page-parts.ts';
import { renderLearned } from './render-learned.ts';

const NAME = '<img src=x onerror=alert(1)>';

describe('The page of what was learned from a log', () => {
  test('embeds the answer as it is, comes out the same again, and loads nothing', () => {
    const html = renderLearned(learnedFixture());
    const json = html.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
    expect(JSON.parse(json)).toEqual(learnedFixture());
    expect(renderLearned(learnedFixture())).toBe(html);
    expect(withoutData(html)).not.toMatch(/<script/);
    expect(withoutData(html)).not.toMatch(/(?:src|href)="(?!#)/);
  });

  test('shows names of the log as text', () => {
    const hostile = JSON.parse(JSON.stringify(learnedFixture()).replaceAll('lens ring', NAME));
    const text = withoutData(renderLearned(hostile));
    expect(text).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(text).not.toMatch(/<img/);
  });

  test('says what was counted, what the intervals of nothing are, and which rows needed care', () => {
    const text = withoutData(renderLearned(learnedFixture()));
    expect(text).toContain('120 jobs in 10 weeks; 95 %: 9.9 to 14.3');
    expect(text).toContain('or <bdi>weibull shape 1.5, mean 5 min per part</bdi>');
    expect(text).toContain('4 durations are too few to fit a law.');
    expect(text).toContain('7, 12, 90');
    expect(text).toContain('every 244 h and never');
  });
});
