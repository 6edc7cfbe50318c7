import { watchedWeekFixture } from '@buildweek/charts/watched-week-fixture';
import { describe, expect, it } from 'vitest';
import { withoutData } from './fixture/page-parts.ts';
import { renderWeek } from './render-week.ts';

describe('renderWeek', () => {
  const page = renderWeek(watchedWeekFixture(), null, '1.2.3');

  it('traces the job that took longest, with every stretch of its way', () => {
    expect(page).toContain('The way of job 4');
    expect(page).toContain('waits for the shift 13 h (before build: unload)'.replace('13 h', '13\u00a0h'));
    expect(page).toContain('Mon 07:00');
  });

  it('shows what comes from the scenario as text', () => {
    const hostile = withoutData(renderWeek(watchedWeekFixture('<img src=x onerror=alert(1)>'), 4, '1.2.3'));
    expect(hostile).not.toContain('<img');
    expect(hostile).toContain('&lt;img');
  });
});
