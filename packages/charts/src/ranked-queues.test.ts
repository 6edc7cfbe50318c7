import type { Queue } from '@buildweek/results';
import { expect, test } from 'vitest';
import { resultsFixture } from './fixture/results-fixture.ts';
import { drawnWords, peakHour, queueTitle, queueWords, rankedQueues } from './ranked-queues.ts';
import { textWidth } from './text-width.ts';

const results = resultsFixture();

function withCurve(value: readonly number[]): Queue {
  const [queue] = results.queues;
  if (queue === undefined) throw new Error('The fixture has no queues.');
  return { ...queue, byHourOfWeek: { ...queue.byHourOfWeek, value: [...value] } };
}

test('Queues are ranked by their mean length, without the jobs in the lab as a whole.', () => {
  const lengths = rankedQueues(results).map((queue) => queue.meanLength.value);
  expect(lengths).toEqual([...lengths].sort((one, other) => other - one));
  expect(rankedQueues(results).map((queue) => queue.kind)).not.toContain('all');
});

test('Where more queues are than are drawn, the chart says so.', () => {
  expect(drawnWords(results)).toBe(' The 6 longest of 10 queues are drawn.');
  expect(drawnWords({ ...results, queues: results.queues.slice(0, 3) })).toBe('');
});

test('The peak of a plateau is its last hour, also when it runs from Sunday into Monday.', () => {
  const curve = Array.from({ length: 168 }, (_, hour) => (hour < 7 || hour >= 110 ? 5 : 1));
  expect(peakHour(withCurve(curve))).toBe(6);
});

test('A single peak is its own hour.', () => {
  const curve = Array.from({ length: 168 }, (_, hour) => (hour === 33 ? 4 : 1));
  expect(peakHour(withCurve(curve))).toBe(33);
});

test('A curve without any peak has one all the same.', () => {
  expect(peakHour(withCurve(Array.from({ length: 168 }, () => 2)))).toBeLessThan(168);
});

test('A queue is called by what is waited for.', () => {
  const words = (kind: Queue['kind']): string => queueWords({ ...withCurve([1]), name: 'resin', kind });
  expect(words('machine')).toBe('“resin” machines');
  expect(words('station')).toBe('the station “resin”');
  expect(words('people')).toBe('people who can “resin”');
});

test('The title of a small chart never outgrows its room.', () => {
  const title = queueTitle({ ...withCurve([1]), name: 'W'.repeat(200), kind: 'people' }, 'wide', 200);
  expect(textWidth(title, 13, true)).toBeLessThanOrEqual(200);
  expect(title).toMatch(/… \(people\): \d/);
});
