import { expect, test } from 'vitest';
import { joinWords } from './words.ts';

test('Words are joined as in a sentence.', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(joinWords)).toEqual(['', 'a', 'a and b', 'a, b and c']);
});
