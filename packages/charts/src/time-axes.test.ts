import { expect, test } from 'vitest';
import { resultsFixture } from './fixture/results-fixture.ts';
import { closedSpans, weekAxis } from './time-axes.ts';

test('Closed are the hours in which nobody of any group is on duty.', () => {
  const results = resultsFixture();
  const spans = closedSpans(results);
  // The fixture: technicians 7 to 15 on five days, evening help 16 to 20 on four.
  expect(spans.slice(0, 3)).toEqual([
    { from: 0, to: 7 },
    { from: 15, to: 16 },
    { from: 20, to: 31 },
  ]);
  expect(spans.at(-1)).toEqual({ from: 4 * 24 + 15, to: 168 });
});

test('A lab without people is closed all week.', () => {
  expect(closedSpans({ ...resultsFixture(), people: [] })).toEqual([{ from: 0, to: 168 }]);
});

test('Weeks on an axis carry their first days.', () => {
  const results = resultsFixture();
  const axis = JSON.stringify(
    weekAxis({ ...results, lab: { ...results.lab, startDate: '2027-03-01' } }, 'wide'),
  );
  expect(axis).toContain("['week 1','1 Mar'],['week 2','8 Mar']");
});
