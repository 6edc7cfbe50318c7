import type { PartAnswer } from '@buildweek/results';
import { expect, test } from 'vitest';
import { partAnswerFixture } from '../fixture/part-answer-fixture.ts';
import { firstChoice } from './first-choice.ts';

const answer = partAnswerFixture();

/** The answer with the same hours for every way at every quantity, where one is asked about. */
function withHours(hoursOf: (route: string, quantity: number) => number): PartAnswer {
  return {
    ...answer,
    ways: answer.ways.map((way) => ({
      ...way,
      quantities: way.quantities.map((times) => {
        const typical = hoursOf(way.route, times.quantity);
        const hours = { typical, low: typical, high: typical };
        return { ...times, finished: times.finished.map((one) => ({ ...one, hours })) };
      }),
    })),
  };
}

test('The title names who is first for the fewest and for the most pieces.', () => {
  expect(firstChoice(answer, 'wide').title).toBe(
    'Finished first, asked for on Monday 09:00: “small extruder part” for 1\u00a0piece, “powder part” for 100\u00a0pieces',
  );
});

test('Who is first for few and for many is named once.', () => {
  const always = withHours((route, quantity) => (route === 'resin part' ? 2 : 3) * quantity);
  expect(firstChoice(always, 'wide').title).toBe(
    'Finished first, asked for on Monday 09:00: “resin part” for 1\u00a0piece and for 100\u00a0pieces',
  );
});

test('Ways whose hours read alike are first together.', () => {
  const alike = withHours((route) => (route === 'resin part' ? 2.01 : route === 'powder part' ? 2.02 : 9));
  const { title, spec } = firstChoice(alike, 'wide');
  expect(title).toContain('“resin part” and “powder part” for 1\u00a0piece and for 100\u00a0pieces');
  const bold = (
    spec as unknown as {
      concat: { layer: { mark: { fontWeight?: string }; data: { values: unknown[] } }[] }[];
    }
  ).concat.map(({ layer }) => layer.find((one) => one.mark.fontWeight === 'bold')?.data.values.length);
  expect(bold).toEqual([2, 2, 2, 2]);
});

test('A narrow chart shows the fewest and the most pieces, a wide one four numbers of pieces.', () => {
  const panels = (size: 'wide' | 'narrow'): number =>
    (firstChoice(answer, size).spec as unknown as { concat: unknown[] }).concat.length;
  expect([panels('wide'), panels('narrow')]).toEqual([4, 2]);
});
