import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EventCalendar,
  PHASE_ARRIVALS,
  PHASE_ENDS,
  PHASE_TIMERS,
  PHASE_WINDOWS_BEGIN,
} from './event-calendar.ts';

describe('EventCalendar', () => {
  it('gives events of one instant in the order of their phases, then as they were put in', () => {
    const calendar = new EventCalendar(2);
    calendar.schedule(10, PHASE_TIMERS, 1, 0, 0);
    calendar.schedule(10, PHASE_ARRIVALS, 2, 0, 0);
    calendar.schedule(10, PHASE_ENDS, 3, 0, 0);
    calendar.schedule(10, PHASE_ARRIVALS, 4, 0, 0);
    calendar.schedule(5, PHASE_TIMERS, 5, 0, 0);
    calendar.schedule(10, PHASE_WINDOWS_BEGIN, 6, 0, 0);
    const kinds: number[] = [];
    while (calendar.take()) kinds.push(calendar.kind);
    expect(kinds).toEqual([5, 3, 6, 2, 4, 1]);
  });

  it('keeps no event that is never reached', () => {
    const calendar = new EventCalendar();
    calendar.schedule(Number.POSITIVE_INFINITY, PHASE_ENDS, 1, 0, 0);
    expect(calendar.length).toBe(0);
    expect(calendar.take()).toBe(false);
  });

  it('agrees with a sorted list under any mixture of putting in and taking out', () => {
    const operation = fc.oneof(
      fc.record({ time: fc.integer({ min: 0, max: 20 }), phase: fc.integer({ min: 0, max: 4 }) }),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.array(operation, { maxLength: 200 }), (operations) => {
        const calendar = new EventCalendar(1);
        const list: { time: number; phase: number; sequence: number }[] = [];
        operations.forEach((step, sequence) => {
          if (step !== null) {
            calendar.schedule(step.time, step.phase, 0, sequence, 0);
            list.push({ ...step, sequence });
            return;
          }
          list.sort((a, b) => a.time - b.time || a.phase - b.phase || a.sequence - b.sequence);
          const expected = list.shift();
          expect(calendar.take()).toBe(expected !== undefined);
          if (expected !== undefined) expect(calendar.subject).toBe(expected.sequence);
          expect(calendar.length).toBe(list.length);
          expect(calendar.nextTime).toBe(Math.min(...list.map(({ time }) => time)));
        });
      }),
    );
  });
});
