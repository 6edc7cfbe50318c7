import type { Estimate, StepHours } from '@buildweek/results';
import { expect, test } from 'vitest';
import { resultsFixture } from './fixture/results-fixture.ts';
import { familyOf, gatherHours, outerInterval, segmentsOf } from './hour-families.ts';

function hours(value: number, half: number): Estimate {
  return { kind: 'estimate', value, low: value - half, high: value + half, level: 0.95, replications: 30 };
}

const steps: readonly StepHours[] = [
  {
    stage: 'build',
    phase: 'set-up',
    attended: true,
    work: hours(0.5, 0.1),
    waits: [{ cause: 'shift', hours: hours(6, 1) }],
  },
  { stage: 'build', phase: 'print', attended: false, work: hours(9, 0.5), waits: [] },
  {
    stage: 'wash',
    phase: 'run',
    attended: false,
    work: hours(0.25, 0.05),
    waits: [{ cause: 'person', hours: hours(2, 0.5) }],
  },
  {
    stage: 'inspect',
    phase: 'work',
    attended: true,
    work: hours(0.25, 0.05),
    waits: [{ cause: 'shift', hours: hours(3, 0.5) }],
  },
];

test('Work is gathered by family and waits by cause.', () => {
  const gathered = gatherHours(steps);
  expect(Object.fromEntries(gathered.work)).toEqual({
    'hand work': 0.75,
    print: 9,
    'stations and plain waits': 0.25,
  });
  expect(Object.fromEntries(gathered.waits)).toEqual({ shift: 9, person: 2 });
  expect(gathered.total).toBe(21);
});

test('Printing, other machine time, hands and what runs by itself are told apart.', () => {
  expect(familyOf({ phase: 'print', attended: false })).toBe('print');
  expect(familyOf({ phase: 'cool-down', attended: false })).toBe('warm-up and cool-down');
  expect(familyOf({ phase: 'unload', attended: true })).toBe('hand work');
  expect(familyOf({ phase: 'run', attended: true })).toBe('hand work');
  expect(familyOf({ phase: 'wait', attended: false })).toBe('stations and plain waits');
  expect(familyOf({ phase: 'outside', attended: false })).toBe('made outside');
});

test('Segments add up to the lead time, work before waits, and what is made outside last.', () => {
  const segments = segmentsOf(gatherHours(steps), String);
  expect(segments.reduce((sum, segment) => sum + segment.value, 0)).toBe(21);
  expect(segments.map((segment) => segment.part.code)).toEqual([...'ABCDEFGHIJKLM']);
});

test('The intervals of the pieces add up to one that is not too narrow.', () => {
  const interval = outerInterval(steps);
  expect(interval.low).toBeCloseTo(21 - 2.7, 10);
  expect(interval.high).toBeCloseTo(21 + 2.7, 10);
});

test('In the fixture, as in every run, work and waits make the mean lead time.', () => {
  const results = resultsFixture();
  for (const part of results.hours) {
    const mean = results.jobs.find((one) => one.part === part.part && one.priority === 'all')?.meanLeadTime;
    expect(mean?.kind).toBe('estimate');
    if (mean?.kind === 'estimate') expect(gatherHours(part.steps).total).toBeCloseTo(mean.value, 1);
  }
});
