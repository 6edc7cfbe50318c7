import { promiseFixture } from '@buildweek/charts/promise-fixture';
import { describe, expect, test } from 'vitest';
import { rowsOf, sectionIds, withoutData } from './fixture/page-parts.ts';
import { renderPromise } from './render-promise.ts';

const NAME = '<img src=x onerror=alert(1)>';

describe('The page of promised dates', () => {
  const page = renderPromise(promiseFixture());
  const text = withoutData(page);

  test('embeds the answer as it is, comes out the same again, and loads nothing', () => {
    const json = page.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
    expect(JSON.parse(json)).toEqual(promiseFixture());
    expect(renderPromise(promiseFixture())).toBe(page);
    expect(text).not.toMatch(/<script/);
    expect(text).not.toMatch(/(?:src|href)="(?!#)/);
  });

  test('says what to start first, then how the jobs stand, then what a request gets', () => {
    expect(sectionIds(text)).toEqual([
      'today',
      'jobs',
      'request',
      'moves',
      'effects',
      'assumptions',
      'cautions',
      'origin',
    ]);
    expect(rowsOf(text, 'starts-table')[1]).toEqual([
      'resin 1',
      'job 1: 1 × ring',
      'Mon 1 Mar 10:00',
      '11:30',
      'technicians 1',
      '91 %',
    ]);
    expect(rowsOf(text, 'ways-table')[2]?.at(-1)).toContain('not given [1]');
    expect(text).toContain('It is later than the 4 weeks');
    expect(text).toContain('2 rush jobs have come before it');
  });

  test('leaves out what was not asked for', () => {
    const bare = withoutData(renderPromise({ ...promiseFixture(), request: null, day: null }));
    expect(sectionIds(bare)).toEqual(['jobs', 'assumptions', 'cautions', 'origin']);
  });

  test('shows names as text', () => {
    const hostile = JSON.parse(JSON.stringify(promiseFixture()).replaceAll('ring', NAME)) as ReturnType<
      typeof promiseFixture
    >;
    const shown = withoutData(renderPromise({ ...hostile, run: promiseFixture().run }));
    expect(shown).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(shown).not.toMatch(/<img/);
  });
});
