import { awayFixture, doubtsFixture, growthFixture } from '@buildweek/charts/questions-fixture';
import { describe, expect, test } from 'vitest';
import { withoutData } from './fixture/page-parts.ts';
import { renderAway } from './render-away.ts';
import { renderDoubts } from './render-doubts.ts';
import { renderGrowth } from './render-growth.ts';

const NAME = '<img src=x onerror=alert(1)>';

/** The same answer with a name that is code. */
function hostile<Answer>(answer: Answer, name: string): Answer {
  return JSON.parse(JSON.stringify(answer).replaceAll(name, NAME)) as Answer;
}

const PAGES = [
  [
    'doubts',
    () => renderDoubts(doubtsFixture()),
    () => renderDoubts(hostile(doubtsFixture(), 'demand')),
    doubtsFixture(),
  ],
  [
    'growth',
    () => renderGrowth(growthFixture()),
    () => renderGrowth(hostile(growthFixture(), 'evening help')),
    growthFixture(),
  ],
  [
    'away',
    () => renderAway(awayFixture()),
    () => renderAway(hostile(awayFixture(), 'technicians')),
    awayFixture(),
  ],
] as const;

describe.each(PAGES)('The page of %s', (_, page, hostilePage, answer) => {
  test('embeds the answer as it is, comes out the same again, and loads nothing', () => {
    const html = page();
    const json = html.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
    expect(JSON.parse(json)).toEqual(answer);
    expect(page()).toBe(html);
    expect(withoutData(html)).not.toMatch(/<script/);
    expect(withoutData(html)).not.toMatch(/(?:src|href)="(?!#)/);
  });

  test('shows names as text', () => {
    const text = withoutData(hostilePage());
    expect(text).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(text).not.toMatch(/<img/);
  });
});

test('The page of growth says what to order when, what is over budget, and why a figure is not given.', () => {
  const text = withoutData(renderGrowth(growthFixture()));
  for (const words of [
    'What to order when, so that all targets hold',
    'at once (2027-01-07 is past)',
    '2027-03-09',
    'over budget',
    'There were no such jobs.',
  ]) {
    expect(text).toContain(words);
  }
});
