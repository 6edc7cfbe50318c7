import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { sameZip } from './same-zip.ts';

function made(at: Date, created: string): Uint8Array {
  const core = `<p><dc:title>A</dc:title><dcterms:created xsi:type="x">${created}</dcterms:created></p>`;
  const inner = zipSync({ 'b.xml': strToU8('<b/>') }, { mtime: at });
  return zipSync(
    {
      'docProps/core.xml': strToU8(core),
      '[Content_Types].xml': strToU8('<Types></Types>'),
      '_rels/.rels': strToU8('<Relationships></Relationships>'),
      'book.xlsx': inner,
    },
    { mtime: at },
  );
}

it('makes of files that differ in their times alone the same bytes', () => {
  const one = sameZip(made(new Date(2026, 1, 1), '2026-02-01'));
  const other = sameZip(made(new Date(2027, 5, 5), '2027-06-05'));
  expect(Buffer.compare(one, other)).toBe(0);
  expect(Object.keys(unzipSync(one))[0]).toBe('[Content_Types].xml');
  expect(strFromU8(unzipSync(one)['docProps/core.xml'] ?? new Uint8Array())).toBe(
    '<p><dc:title>A</dc:title></p>',
  );
});

it('says near the start what a file was made with, and lists the place where it says so', () => {
  const marked = sameZip(made(new Date(2026, 1, 1), 'now'), { application: 'buildweek table' });
  expect(strFromU8(marked.subarray(0, 4096), true)).toContain('<Application>buildweek table</Application>');
  const files = unzipSync(marked);
  expect(strFromU8(files['[Content_Types].xml'] ?? new Uint8Array())).toContain('/docProps/app.xml');
  expect(strFromU8(files['_rels/.rels'] ?? new Uint8Array())).toContain('docProps/app.xml');
});
