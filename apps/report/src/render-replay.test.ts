import { replayFixture } from '@buildweek/charts/replay-fixture';
import type { ReplayAnswer } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { withoutData } from './fixture/page-parts.ts';
import { renderReplay } from './render-replay.ts';

const NAME = '<img src=x onerror=alert(1)>';

describe('The page that holds a model against a log', () => {
  const html = renderReplay(replayFixture());
  const text = withoutData(html);

  test('embeds the answer as it is, comes out the same again, and loads nothing', () => {
    const json = html.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
    expect(JSON.parse(json)).toEqual(replayFixture());
    expect(renderReplay(replayFixture())).toBe(html);
    expect(text).not.toMatch(/<script/);
    expect(text).not.toMatch(/(?:src|href)="(?!#)/);
  });

  test('begins with the verdict, and says what was judged, what was left out and how sure the check is', () => {
    for (const words of [
      'does the model do what the lab did?',
      'in 3 of 6 weeks',
      '6 weeks from 2026-03-30, 96 jobs',
      'up to 2026-03-29',
      'slower than modelled',
      'leaves the band',
      'most unusual\n5 %',
      'gadget',
      '3, 9, 17 …',
    ]) {
      expect(text).toContain(words);
    }
  });

  test('shows where jobs were only where the log knows it', () => {
    expect(text).toContain('Where jobs were');
    expect(withoutData(renderReplay({ ...replayFixture(), stages: [] }))).not.toContain('Where jobs were');
  });

  test('shows names as text', () => {
    const hostile = JSON.parse(JSON.stringify(replayFixture()).replaceAll('housing', NAME)) as ReplayAnswer;
    const page = withoutData(renderReplay(hostile));
    expect(page).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(page).not.toMatch(/<img/);
  });
});
