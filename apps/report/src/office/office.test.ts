import { posix } from 'node:path';
import { decisionFixture } from '@buildweek/charts/decision-fixture';
import { resultsFixture } from '@buildweek/charts/fixture';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { chartFilesOf, csvOf, pdfOf, slidesOf, workbookOf } from './index.ts';

const decision = decisionFixture();
const results = resultsFixture();
const paper = pdfOf(results);

/** Texts of the files inside an office file, by path. */
function texts(bytes: Uint8Array): Map<string, string> {
  return new Map(
    Object.entries(unzipSync(bytes))
      .filter(([path]) => /\.(?:xml|rels)$/.test(path))
      .map(([path, content]) => [path, strFromU8(content)]),
  );
}

describe('files for the office', () => {
  it.each([
    ['a PDF', pdfOf],
    ['slides', slidesOf],
    ['a workbook', workbookOf],
  ])('come out the same, byte for byte: %s', async (_, make) => {
    const first = make === pdfOf ? await paper : await make(results);
    expect(Buffer.compare(first, await make(resultsFixture()))).toBe(0);
  });

  it('name no person, no other program and no time', async () => {
    const files = texts(await slidesOf(results));
    expect(files.get('docProps/core.xml')).not.toMatch(/creator|lastModifiedBy|dcterms:(created|modified)/);
    expect(files.get('docProps/app.xml')).toContain('<Application>buildweek slides</Application>');
    const pdf = Buffer.from(await paper).toString('latin1');
    expect(pdf).not.toContain('/Author');
    expect(pdf).toContain('<pdf:Producer>buildweek 0.1.0</pdf:Producer>');
  });

  it.each([
    ['slides', slidesOf],
    ['a workbook', workbookOf],
  ])(
    'list every part that they have and none that they lack, and lead to parts that are there: %s',
    async (_, make) => {
      const bytes = await make(decision);
      const paths = Object.keys(unzipSync(bytes));
      const contents = texts(bytes).get('[Content_Types].xml') ?? '';
      const listed = [...contents.matchAll(/PartName="\/([^"]+)"/g)].map(([, path]) => path);
      expect(listed.filter((path) => !paths.includes(path ?? ''))).toEqual([]);
      const endings = new Set([...contents.matchAll(/Extension="([^"]+)"/g)].map(([, ending]) => ending));
      const unlisted = paths.filter((path) => !listed.includes(path) && !endings.has(path.split('.').at(-1)));
      expect(unlisted.filter((path) => path !== '[Content_Types].xml')).toEqual([]);
      const ways = [...texts(bytes)].filter(([path]) => path.endsWith('.rels'));
      for (const [path, text] of ways) {
        const folder = posix.dirname(posix.dirname(path));
        const targets = [...text.matchAll(/Target="([^"]+)"/g)].map(([, target = '']) =>
          target.startsWith('/') ? target.slice(1) : posix.join(folder, target),
        );
        expect(targets.filter((target) => !paths.includes(target))).toEqual([]);
      }
    },
  );

  it('have six to ten slides with notes', async () => {
    for (const document of [results, decision]) {
      const paths = [...texts(await slidesOf(document)).keys()];
      const slides = paths.filter((path) => /^ppt\/slides\/slide\d+\.xml$/.test(path));
      expect(slides.length).toBeGreaterThanOrEqual(6);
      expect(slides.length).toBeLessThanOrEqual(10);
      expect(paths.filter((path) => /^ppt\/notesSlides\/notesSlide\d+\.xml$/.test(path))).toHaveLength(
        slides.length,
      );
    }
  });

  it('draw intervals into charts that can be edited, with the numbers of the document', async () => {
    const files = texts(await slidesOf(results));
    const chart = [...files.values()].find((xml) => xml.includes('nine of ten are finished')) ?? '';
    const found = results.jobs[0]?.percentiles.find(({ share }) => share === 0.9)?.longRun;
    if (found?.kind !== 'estimate') throw new Error('the fixture has no such number');
    expect(chart.match(/<c:errBars>/g)).toHaveLength(2);
    expect(chart).toContain(`<c:v>${Number(((found.high - found.value) / 24).toFixed(4))}</c:v>`);
    expect(chart).toContain(`<c:v>${Number((found.value / 24).toFixed(4))}</c:v>`);
  });

  it('hold every chart as drawing, picture and specification, and an index of them', () => {
    const files = chartFilesOf(results);
    const index = JSON.parse(String(files.at(-1)?.content));
    expect(files.at(-1)?.name).toBe('charts.json');
    expect(index.charts.length).toBeGreaterThan(10);
    for (const { id, files: names, title, description } of index.charts) {
      const contents = Object.values<string>(names).map(
        (name) => files.find((file) => file.name === name)?.content,
      );
      expect({ id, title: title !== '', description: description !== '' }).toEqual({
        id,
        title: true,
        description: true,
      });
      expect(String(contents[0])).toMatch(/^<svg .*DejaVu Sans Condensed/s);
      expect(
        Buffer.from(contents[1] as Uint8Array)
          .subarray(1, 4)
          .toString(),
      ).toBe('PNG');
      expect(JSON.parse(String(contents[2]))).toHaveProperty('config');
    }
  });

  it('hold every number of the document in the table, with point, comma and CRLF', () => {
    const lines = csvOf(decision).split('\r\n');
    expect(lines[0]).toBe(
      '\ufeffsection,subject,measure,value,unit,low,high,interval,level,replications,note',
    );
    const { keyNumbers } = decision;
    const value = keyNumbers[0]?.value;
    if (value?.kind !== 'estimate') throw new Error('the fixture has no such number');
    expect(lines.find((line) => line.startsWith('The decision,recommended,'))).toContain(
      `,${value.value},share,${value.low},${value.high},confidence,${value.level},${value.replications},`,
    );
    expect(lines.some((line) => line.startsWith('Differences,') && line.includes(',-41,'))).toBe(true);
  });

  it('freeze the heads of a workbook and keep numbers as numbers, one sheet for each section', async () => {
    const files = texts(await workbookOf(results));
    const sheets = [...files].filter(([path]) => path.startsWith('xl/worksheets/sheet'));
    expect(sheets.length).toBeGreaterThan(8);
    for (const [, xml] of sheets) {
      expect(xml).toMatch(/<pane [^>]*state="frozen"/);
      expect(xml).not.toContain('<f>');
    }
    const mean = results.jobs[0]?.meanLeadTime;
    if (mean?.kind !== 'estimate') throw new Error('the fixture has no such number');
    expect(sheets.some(([, xml]) => xml.includes(`<v>${mean.value}</v>`))).toBe(true);
  });
});
