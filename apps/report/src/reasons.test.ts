import { expect, test } from 'vitest';
import { Reasons } from './reasons.ts';

test('The same reason has the same number, and each stands once under the table.', () => {
  const reasons = new Reasons();
  expect(['too few jobs', 'no promise', 'too few jobs'].map((reason) => reasons.numberOf(reason))).toEqual([
    1, 2, 1,
  ]);
  expect(reasons.list().source).toMatch(/<li>too few jobs<\/li><li>no promise<\/li>/);
});

test('Without reasons there is no list.', () => {
  expect(new Reasons().list().source).toBe('');
});

test('A reason is text.', () => {
  const reasons = new Reasons();
  reasons.numberOf('<b>few</b>');
  expect(reasons.list().source).toContain('<li>&lt;b&gt;few&lt;/b&gt;</li>');
});
