import { decisionFixture } from '@buildweek/charts/decision-fixture';
import { watchedWeekFixture } from '@buildweek/charts/watched-week-fixture';
import { describe, expect, it } from 'vitest';
import { withoutData } from './fixture/page-parts.ts';
import { renderDecision } from './render-decision.ts';

const answer = decisionFixture();
const page = renderDecision(answer, watchedWeekFixture());
const head = page.slice(page.indexOf('<header'), page.indexOf('</header>')).replaceAll('\u00a0', ' ');

describe('The first screen of a decision', () => {
  it('says what is asked, what is proposed, and the three numbers with their intervals and what they are today', () => {
    for (const told of [answer.question, 'from 2 to 3', '94', '93 to 95', '182\u202f412', 'not paid back']) {
      expect(head).toContain(told);
    }
    expect(head.match(/As it is: /g)).toHaveLength(3);
    expect(head).toContain('In 65 of 100 replications it does not pay back within 5 years.');
  });

  it('has the one chart that shows why', () => {
    expect(head.match(/<figcaption/g)).toHaveLength(1);
    expect(head).toContain('the recommended plan is the cheapest that reaches every target');
  });
});

describe('The page of a decision', () => {
  it('has every id once', () => {
    const ids = [...withoutData(page).matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  it('sets the options side by side with the verdict against today', () => {
    const table = page.slice(page.indexOf('options-table-section'), page.indexOf('id="key-numbers"'));
    for (const told of ['As it is', 'Recommended', 'Cheaper', 'Faster', 'resin: 3', '✓', '✗', '▲']) {
      expect(table).toContain(told);
    }
  });

  it('shows what comes from the scenario as text', () => {
    const name = '<img src=x onerror=alert(1)>';
    const hostile = withoutData(renderDecision(decisionFixture(name)));
    expect(hostile).not.toContain('<img');
    expect(hostile).toContain('&lt;img src=x onerror=alert(1)&gt;');
  });

  it('is the same for the same decision', () => {
    expect(renderDecision(answer, watchedWeekFixture())).toBe(page);
  });

  it('says when today is recommended, and shows that lab', () => {
    const same = renderDecision({
      ...answer,
      recommended: null,
      options: answer.options.slice(0, 1),
      pairs: [],
    });
    expect(same).toContain('The lab as it is, in full');
    expect(same).not.toContain('The recommended lab, in full');
  });
});
