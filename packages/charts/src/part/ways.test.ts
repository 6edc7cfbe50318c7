import { expect, test } from 'vitest';
import { partAnswerFixture } from '../fixture/part-answer-fixture.ts';
import { PROCESS_COLOURS } from '../palette.ts';
import { drawnWays, wayLabel } from './ways.ts';

const answer = partAnswerFixture();

test('Every way has its letter; ways of one process share its colour and differ in dash.', () => {
  const ways = drawnWays(answer);
  expect(ways.map((one) => one.code)).toEqual(['A', 'B', 'C', 'D']);
  expect(ways.map((one) => one.colour)).toEqual(answer.ways.map((way) => PROCESS_COLOURS[way.process]));
  expect(ways[0]?.dash).not.toEqual(ways[1]?.dash);
});

test('Letters go on beyond the alphabet without coming again.', () => {
  const [way] = answer.ways;
  if (way === undefined) throw new Error('The fixture has no ways.');
  const many = Array.from({ length: 60 }, (_, index) => ({ ...way, route: `route ${index}` }));
  expect(new Set(drawnWays({ ...answer, ways: many }).map((one) => one.code)).size).toBe(60);
});

test('A label keeps letter and process where the name is cut.', () => {
  const [way] = drawnWays(answer);
  if (way === undefined) throw new Error('The fixture has no ways.');
  expect(wayLabel(way, 400, 13)).toBe('A  small extruder part, MEX');
  expect(wayLabel(way, 100, 13)).toMatch(/^A {2}small.*…, MEX$/);
});
