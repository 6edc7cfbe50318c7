import { expect, test } from 'vitest';
import { answerInWords } from './answer-in-words.ts';

const sizeOf = (letters: number) =>
  /class="answer ([a-z-]+)"/.exec(answerInWords(['a'.repeat(letters)]).source)?.[1];

test('the longer the first sentence, the smaller it is set', () => {
  expect([90, 91, 200, 201].map(sizeOf)).toEqual(['short', 'long', 'long', 'very-long']);
});

test('no line ends before a per cent sign, and names are text', () => {
  const page = answerInWords(['90 % of <b>jobs</b>', 'on time: 5 %']).source;
  expect(page).toContain('<bdi>90\u00a0% of &lt;b&gt;jobs&lt;/b&gt;</bdi>');
  expect(page).toContain('<li><bdi>on time: 5\u00a0%</bdi></li>');
});

test('there is no list where one sentence says all, and nothing where there is none', () => {
  expect(answerInWords(['all']).source).not.toContain('<ul');
  expect(answerInWords([]).source.trim()).toBe('');
});
