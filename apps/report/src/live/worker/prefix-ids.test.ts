import { expect, test } from 'vitest';
import { html } from '../../html.ts';
import { prefixIds } from './prefix-ids.ts';

test('Ids and all that refers to them move to a space of their own; text stays.', () => {
  const before = html`<p id="a" aria-labelledby="b c">id="a" url(#a)</p><a href="#a">${'<i id="x">'}</a><path clip-path="url(#d)"/>`;
  expect(prefixIds(before, 'live-').source).toBe(
    '<p id="live-a" aria-labelledby="live-b live-c">id="a" url(#a)</p><a href="#live-a">&lt;i id=&quot;x&quot;&gt;</a><path clip-path="url(#live-d)"/>',
  );
});
