import fc from 'fast-check';
import { expect, test } from 'vitest';
import { escapeText, html, jsonScript, nameText } from './html.ts';

test('Everything that is put into HTML is text, unless it is HTML already.', () => {
  const inner = html`<b>${'<i>'}</b>`;
  expect(html`<p title="${'"x"'}">${inner}${['a & b', 3, null]}</p>`.source).toBe(
    '<p title="&quot;x&quot;"><b>&lt;i&gt;</b>a &amp; b3</p>',
  );
});

test('Escaped text holds no letter that HTML would act on, and is the same text when it is read.', () => {
  const read: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
      const escaped = escapeText(text);
      expect(escaped).not.toMatch(/[<>"']/);
      expect(escaped.replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => read[name] ?? '')).toBe(text);
    }),
  );
});

test('A name keeps its writing direction to itself.', () => {
  expect(nameText('שלום <b>').source).toBe('<bdi>שלום &lt;b&gt;</bdi>');
});

test('A JSON document in a page cannot end its script element, and reads back as it was.', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.string(), (value, text) => {
      const document = { value, text: `${text}</script><!--<script>` };
      const { source } = jsonScript('results', document);
      const body = source.slice('<script type="application/json" id="results">'.length, -'</script>'.length);
      expect(body).not.toContain('<');
      expect(JSON.stringify(JSON.parse(body))).toBe(JSON.stringify(document));
    }),
  );
});
