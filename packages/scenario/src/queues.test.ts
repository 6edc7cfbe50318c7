import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { QUEUES } from './fixture/queues.ts';
import { readScenario } from './read-scenario.ts';

function labOf(text: string): Lab {
  const reading = readScenario(text, 'queue.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
  expect(reading.warnings).toEqual([]);
  return reading.lab;
}

describe('a plain queueing system', () => {
  it.each(Object.entries(QUEUES))('is worded in a few lines: %s', (_, text) => {
    expect(text.trim().split('\n').length).toBeLessThanOrEqual(16);
    const { clockChanges, startDate, initialState, dispatch, ...lab } = labOf(text);
    expect(clockChanges).toEqual([]);
    expect(startDate).toMatch(/^20\d\d-/);
    expect(initialState).toEqual({ jobs: [], machines: [] });
    expect(dispatch.order).toEqual(['machine', 'station', 'bench']);
    expect(lab).toMatchSnapshot();
  });

  it('is open day and night, and jobs arrive at any time', () => {
    const lab = labOf(QUEUES['M/M/1']);
    expect(lab.calendars).toEqual([
      { name: 'always', weekly: [{ fromHour: 0, toHour: 168 }], closedDays: [], extra: [] },
    ]);
    expect(lab.demand[0]?.arrivals).toMatchObject({ kind: 'poisson', perWeek: 134.4, profile: null });
  });
});
