import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { formatEstimate, formatValue, leadTimeUnit, PERCENT } from '@buildweek/charts';
import { decisionFixture } from '@buildweek/charts/decision-fixture';
import { csvOf, pdfOf, slidesOf, workbookOf } from '@buildweek/report/office';
import { writtenFigure, writtenUnit } from '@buildweek/results';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Folder } from '../cli/buildweek.ts';
import { HOSTILE, hostileDecision } from './hostile-document.ts';
import { converted, pdfFacts, pdfText, pdfWords } from './outside-programs.ts';

const folder = new Folder();
const decision = decisionFixture();
const results = decision.recommended ?? decision.today;
const hostile = hostileDecision();

/** Every sheet of a workbook in a file of its own, as it is shown. */
const EVERY_SHEET = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';

beforeAll(async () => {
  writeFileSync(folder.file('paper.pdf'), await pdfOf(decision));
  writeFileSync(folder.file('hostile-paper.pdf'), await pdfOf(hostile));
  writeFileSync(folder.file('slides.pptx'), await slidesOf(decision));
  writeFileSync(folder.file('hostile.pptx'), await slidesOf(hostile));
  writeFileSync(folder.file('table.xlsx'), await workbookOf(hostile));
  const profile = folder.file('profile');
  await converted([folder.file('slides.pptx'), folder.file('hostile.pptx')], 'pdf', folder.root, profile);
  await converted([folder.file('table.xlsx')], EVERY_SHEET, folder.root, profile);
}, 120_000);
afterAll(() => folder.remove());

/** The figures that every form of the report has to show, as they are written everywhere. */
function figures(): string[] {
  const all = results.jobs.find(({ part, priority }) => part === null && priority === 'all');
  const within = all?.percentiles.find(({ share }) => share === 0.9)?.longRun;
  const of = decision.keyNumbers.flatMap(({ value, unit }) => {
    if (value.kind !== 'estimate' || unit === 'years') return [];
    const written = writtenUnit(unit, [value.value], decision.currency);
    const { value: figure, range } = writtenFigure(value, written);
    return [`${figure} ${written.many}`, `${range?.low} to ${range?.high}`];
  });
  if (within?.kind !== 'estimate' || all?.onTime.kind !== 'estimate')
    throw new Error('the fixture has no such number');
  return [...of, formatEstimate(within, leadTimeUnit(results))].map(plain);
}

/** Without spaces: readers of a PDF differ in which narrow ones they tell. */
function plain(text: string): string {
  return text.replace(/[\s\u00a0\u202f]+/g, '');
}

describe('The PDF, read by another program', () => {
  it('has a title, no author, tags, A4 pages, and the numbers as text', async () => {
    const facts = await pdfFacts(folder.file('paper.pdf'));
    expect(facts.get('Title')).toBe('Three processes · what to decide');
    expect(facts.has('Author')).toBe(false);
    expect(facts.get('Tagged')).toBe('yes');
    expect(facts.get('Page size')).toContain('(A4)');
    const text = await pdfText(folder.file('paper.pdf'));
    for (const figure of figures()) expect(plain(text)).toContain(figure);
    const { onTime } = results.jobs[0] ?? {};
    if (onTime?.kind !== 'estimate') throw new Error('the fixture has no such number');
    expect(text).toContain(formatValue(onTime, PERCENT).replaceAll('\u00a0', ' '));
    for (const { text: caution } of results.cautions) expect(text).toContain(caution);
    expect(text).toContain('default of a machine class');
    expect(text).toContain(`1 of ${facts.get('Pages')}`);
  });

  it('keeps every word on its page, in tables and charts too', async () => {
    for (const file of ['paper.pdf', 'hostile-paper.pdf']) {
      const { words, width, height } = await pdfWords(folder.file(file));
      expect(words.length).toBeGreaterThan(1000);
      const outside = words.filter(
        ({ left, top, right, bottom }) => left < 20 || top < 15 || right > width - 20 || bottom > height - 15,
      );
      expect(outside).toEqual([]);
    }
  });

  it('shows hostile names as text', async () => {
    const text = await pdfText(folder.file('hostile-paper.pdf'));
    expect(text).toContain(HOSTILE.markup);
    expect(text).toContain('=HYPERLINK(');
    expect(text.replaceAll(' ', '')).toContain(HOSTILE.unbroken.slice(0, 60));
    for (const word of HOSTILE.rightToLeft.split(' ')) expect(text).toContain(word);
  });
});

describe('The slides, opened by LibreOffice', () => {
  it('show the numbers, the options and the cautions', async () => {
    const text = await pdfText(folder.file('slides.pdf'));
    for (const figure of figures()) expect(plain(text)).toContain(figure);
    for (const word of ['Recommended', 'Cheaper', 'Faster', 'Unattended running', 'How this was computed']) {
      expect(text).toContain(word);
    }
    expect(text).toContain('nine of ten are finished');
  });

  it('keep every word on its slide', async () => {
    for (const file of ['slides.pdf', 'hostile.pdf']) {
      const { words, width, height } = await pdfWords(folder.file(file));
      const outside = words.filter(
        ({ left, top, right, bottom }) => left < 0 || top < 0 || right > width || bottom > height,
      );
      expect(outside).toEqual([]);
    }
  });

  it('show hostile names as text', async () => {
    const text = await pdfText(folder.file('hostile.pdf'));
    expect(text).toContain(HOSTILE.markup);
    expect(text).toContain('=HYPERLINK');
    for (const word of HOSTILE.rightToLeft.split(' ')) expect(text).toContain(word);
  });
});

describe('The table', () => {
  it('opens as a workbook with the numbers, and no cell of it is a formula', () => {
    const sheets = readdirSync(folder.root).filter((name) => /^table-.*\.csv$/.test(name));
    const rows = sheets.flatMap((name): string[][] =>
      parse(readFileSync(folder.file(name), 'utf8'), { bom: true }),
    );
    expect(sheets.length).toBeGreaterThan(10);
    const cells = rows.flat();
    expect(cells.filter((cell) => /^[=+@]/.test(cell))).toEqual([]);
    expect(cells.some((cell) => cell.startsWith("'=HYPERLINK"))).toBe(true);
    expect(cells).toContain('-41');
    const { meanLeadTime } = hostile.recommended?.jobs[0] ?? {};
    if (meanLeadTime?.kind !== 'estimate') throw new Error('the fixture has no such number');
    const row = rows.find((one) => one[1] === 'All jobs' && one[2] === 'mean lead time');
    expect(Number(row?.[3])).toBeCloseTo(meanLeadTime.value, 6);
  });

  it('reads back from CSV as it was written, hostile names neutralized, negative numbers untouched', () => {
    const rows: string[][] = parse(csvOf(hostile), { bom: true });
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([11]));
    const cells = rows.flat();
    expect(cells.filter((cell) => /^[=+@\t\r]/.test(cell))).toEqual([]);
    expect(cells.filter((cell) => cell.startsWith('-') && !Number.isFinite(Number(cell)))).toEqual([]);
    expect(cells).toContain(HOSTILE.markup);
    expect(cells).toContain(HOSTILE.rightToLeft);
    expect(cells.some((cell) => cell.startsWith("'=HYPERLINK("))).toBe(true);
    expect(cells).toContain('-41');
  });
});
