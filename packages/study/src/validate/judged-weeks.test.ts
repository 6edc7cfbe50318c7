import { describe, expect, it } from 'vitest';
import { judgedWeeks } from './judged-weeks.ts';
import { dayText } from './log-times.ts';

const at = (text: string): number => Date.parse(`${text}Z`);
/** A Wednesday to a Tuesday: 30 whole weeks from Monday 12 January. */
const LOG = { from: at('2026-01-07T00:00'), until: at('2026-08-11T10:00') };
const NOTHING = { judgedFrom: null, learnedUntil: null };

describe('judgedWeeks', () => {
  it('plays from the Monday of the log and judges the last third of its whole weeks', () => {
    const { playedFrom, from, to, weeks } = judgedWeeks(LOG, NOTHING);
    expect([playedFrom, from, to].map(dayText)).toEqual(['2026-01-05', '2026-06-01', '2026-08-10']);
    expect(weeks).toBe(10);
  });

  it('judges everything that was not used for learning, where that is said', () => {
    // A Thursday: its week is not judged.
    const { from, weeks } = judgedWeeks(LOG, { judgedFrom: null, learnedUntil: at('2026-07-02T00:00') });
    expect([dayText(from), weeks]).toEqual(['2026-07-06', 5]);
  });

  it('judges the last third where everything was used for learning', () => {
    const { from } = judgedWeeks(LOG, { judgedFrom: null, learnedUntil: at('2026-08-01T00:00') });
    expect(dayText(from)).toBe('2026-06-01');
  });

  it('lets the lab fill before the first judged week, however little was used for learning', () => {
    const { from } = judgedWeeks(LOG, { judgedFrom: null, learnedUntil: at('2025-03-01T00:00') });
    expect(dayText(from)).toBe('2026-02-09');
  });

  it('judges from the day that the user names, and never before the log begins', () => {
    const from = (day: string): string =>
      dayText(judgedWeeks(LOG, { judgedFrom: at(`${day}T00:00`), learnedUntil: null }).from);
    expect(from('2026-03-30')).toBe('2026-03-30');
    expect(from('2024-01-01')).toBe('2026-01-12');
  });

  it('says what is missing where too few weeks are left', () => {
    expect(() => judgedWeeks({ from: LOG.from, until: at('2026-02-20T00:00') }, NOTHING)).toThrow(
      'The log goes from 2026-01-07 to 2026-02-20: 5 whole weeks. At least 8 are needed',
    );
    expect(() => judgedWeeks(LOG, { judgedFrom: at('2026-07-20T00:00'), learnedUntil: null })).toThrow(
      'From 2026-07-20, the log has 3 whole weeks up to 2026-08-10; at least 4 are needed to judge. Give an earlier --judged-from.',
    );
  });
});
