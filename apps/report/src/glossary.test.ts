import { expect, test } from 'vitest';
import { explanations, term } from './glossary.ts';
import { html } from './html.ts';

test('A term is a button that opens its explanation, in the words of its sentence.', () => {
  expect(term('lead time', 'Lead time').source).toBe(
    '<button type="button" class="term" popovertarget="term-lead-time">Lead time</button>',
  );
});

test('Every term that is used is explained once, also when it is used twice; no other is.', () => {
  const { section, popovers } = explanations([html`${term('payback')} ${term('payback')}`, term('busy')]);
  expect([...popovers.source.matchAll(/id="(term-[^"]+)"/g)].map(([, id]) => id)).toEqual([
    'term-payback',
    'term-busy',
  ]);
  expect(section.source.match(/<dfn>/g)).toHaveLength(2);
});

test('A page without terms has no list of them.', () => {
  const { section, popovers } = explanations([html`<p>payback</p>`]);
  expect(section.source + popovers.source).toBe('');
});
