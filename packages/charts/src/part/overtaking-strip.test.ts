import type { PartAnswer } from '@buildweek/results';
import { expect, test } from 'vitest';
import { partAnswerFixture } from '../fixture/part-answer-fixture.ts';
import {
  changesOfLead,
  drawnOvertakings,
  firstAndLastLeader,
  overtakingRange,
  overtakingWords,
} from './overtaking-strip.ts';

const answer = partAnswerFixture();
const pairs = (list: PartAnswer['overtakings']): string[] =>
  list.map((one) => `${one.slower} > ${one.faster}`);

test('Those that change the lead are told from those behind the lead.', () => {
  expect(pairs(changesOfLead(answer))).toEqual([
    'small extruder part > resin part',
    'resin part > powder part',
  ]);
  expect(answer.overtakings.length).toBeGreaterThan(2);
});

test('Few overtakings are all drawn, many only where the lead changes.', () => {
  expect(drawnOvertakings(answer)).toEqual(changesOfLead(answer));
  const few = { ...answer, overtakings: answer.overtakings.slice(0, 3) };
  expect(drawnOvertakings(few)).toHaveLength(3);
});

test('The last leader stays ahead from the latest quantity at which it overtakes any other.', () => {
  const latest = Math.max(
    ...answer.overtakings.filter((one) => one.faster === 'powder part').map((one) => one.quantity),
  );
  expect(firstAndLastLeader(answer)).toEqual({
    first: 'small extruder part',
    last: 'powder part',
    from: latest,
  });
});

test('Without a curve nobody leads.', () => {
  expect(firstAndLastLeader({ ...answer, ways: [], overtakings: [] })).toBeNull();
});

test('An overtaking is said with its spread, also where some plays never see it.', () => {
  const overtaking = { slower: 'resin part', faster: 'powder part', quantity: 34, low: 20, high: 51 };
  expect(overtakingWords(overtaking)).toBe(
    'from 34\u00a0pieces on: “powder part” before “resin part” (20 to 51)',
  );
  expect(overtakingRange({ ...overtaking, high: null })).toBe('20, or not at all');
});
