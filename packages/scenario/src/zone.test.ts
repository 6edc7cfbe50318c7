import { describe, expect, it } from 'vitest';
import { clockChanges, isZone } from './zone.ts';

const dayOf = (text: string): number => Date.parse(text) / 86_400_000;

describe('the clock changes of a zone', () => {
  // IANA time zone database: in Berlin the clock goes from 02:00 to 03:00 on 2025-03-30 and back on 2025-10-26; in
  // New York from 02:00 to 03:00 on 2025-03-09 and from 02:00 to 01:00 on 2025-11-02.
  it('are found to the minute', () => {
    const start = dayOf('2025-01-06');
    const hoursTo = (day: string): number => (dayOf(day) - start) * 24;
    expect(clockChanges('Europe/Berlin', start).slice(0, 2)).toEqual([
      { atHours: hoursTo('2025-03-30') + 2, localMinusElapsedHours: 1 },
      { atHours: hoursTo('2025-10-26') + 2, localMinusElapsedHours: 0 },
    ]);
    expect(clockChanges('America/New_York', start).slice(0, 2)).toEqual([
      { atHours: hoursTo('2025-03-09') + 2, localMinusElapsedHours: 1 },
      { atHours: hoursTo('2025-11-02') + 1, localMinusElapsedHours: 0 },
    ]);
  });

  it('are counted from the clock at the start of the plan', () => {
    const [first] = clockChanges('Europe/Berlin', dayOf('2025-07-07'));
    expect(first).toEqual({
      atHours: (dayOf('2025-10-26') - dayOf('2025-07-07')) * 24 + 3,
      localMinusElapsedHours: -1,
    });
  });

  it('cover ten years and ascend', () => {
    const changes = clockChanges('Europe/Lisbon', dayOf('2027-03-01'));
    expect(changes).toHaveLength(20);
    expect(changes.map((change) => change.atHours)).toEqual(
      changes.map((change) => change.atHours).sort((a, b) => a - b),
    );
  });

  it('are none where the clock never changes', () => {
    expect(clockChanges('Etc/UTC', dayOf('2027-03-01'))).toEqual([]);
  });

  it('are asked for by names that the database has', () => {
    expect(isZone('Europe/Lisbon')).toBe(true);
    expect(isZone('Europe/Lisbonn')).toBe(false);
    expect(isZone('')).toBe(false);
  });
});
