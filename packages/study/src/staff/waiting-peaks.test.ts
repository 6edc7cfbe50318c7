import { describe, expect, it } from 'vitest';
import { waitingPeak } from './waiting-peaks.ts';

const week = (value: (hour: number) => number): number[] =>
  Array.from({ length: 168 }, (_, hour) => value(hour));
const persons = week((hour) => (hour >= 31 && hour < 39 ? 2 : 0));

describe('the hours in which most jobs wait', () => {
  it('are a block of one day, while somebody is in and while nobody is', () => {
    const waiting = week((hour) =>
      hour === 32 ? 4 : hour === 33 ? 3.8 : hour === 47 ? 5 : hour === 48 ? 4.9 : 1,
    );
    expect(waitingPeak(waiting, persons, true)).toEqual({ when: 'Tuesday 08:00 to 10:00', jobs: 3.9 });
    expect(waitingPeak(waiting, persons, false)).toEqual({ when: 'Tuesday 23:00 to 24:00', jobs: 5 });
  });

  it('are none where hardly anything ever waits', () => {
    expect(
      waitingPeak(
        week(() => 0.05),
        persons,
        true,
      ),
    ).toBeNull();
    expect(
      waitingPeak(
        week(() => 3),
        week(() => 1),
        false,
      ),
    ).toBeNull();
  });
});
