import type { ReportDocument } from '@buildweek/results';
import PDFDocument from 'pdfkit';
import { resetSVGDefIds } from 'vega';
import { sectionsOf } from '../content/sections-of.ts';
import { nameOf, shownResults, titleOf } from '../document.ts';
import { firstLookOf } from '../first-look.ts';
import { plainText } from '../plain-text.ts';
import { drawFirstPage } from './draw-first-page.ts';
import { drawSection } from './draw-section.ts';
import { NOTE, PAGE, Sheet, TEXT_WIDTH } from './sheet.ts';

/**
 * The report on paper: A4, charts as lines and letters, real text, bookmarks, page numbers, a title and the structure
 * that screen readers go by. The first page has the decision in one look. The same document gives the same bytes:
 * the file names no author, its date is the first day of the plan, the only date that the document has, and its identifier
 * follows from both.
 *
 * Limits: letters that the typeface lacks (those of Chinese, Japanese, Korean and Indian languages) come out as empty
 * boxes; lines of text that runs from right to left begin at the left (see `seenFromLeft`).
 */
export async function pdfOf(document: ReportDocument): Promise<Uint8Array> {
  resetSVGDefIds();
  const paper = new PDFDocument({
    size: [PAGE.width, PAGE.height],
    margins: { left: PAGE.left, right: PAGE.right, top: PAGE.top, bottom: 0 },
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    info: {
      Title: plainText(titleOf(document)),
      Subject: plainText(`Results with hash ${shownResults(document).scenario.hash.slice(0, 12)}`),
      Creator: `buildweek ${document.program.version}`,
      Producer: `buildweek ${document.program.version}`,
      CreationDate: new Date(`${shownResults(document).lab.startDate}T00:00:00Z`),
    },
  });
  const bytes = bytesOf(paper);
  const sheet = new Sheet(paper);
  paper.outline.addItem('In one look');
  const reasons = drawFirstPage(sheet, firstLookOf(document));
  sheet.newPage();
  if (reasons.length > 0) {
    drawSection(sheet, { title: 'Further reasons', blocks: [{ kind: 'list', items: reasons }] });
  }
  for (const section of sectionsOf(document)) drawSection(sheet, section);
  numberPages(sheet, nameOf(document));
  paper.end();
  return bytes;
}

function bytesOf(paper: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    paper.on('data', (chunk: Buffer) => chunks.push(chunk));
    paper.on('end', () => resolve(Buffer.concat(chunks)));
    paper.on('error', reject);
  });
}

function numberPages(sheet: Sheet, name: string): void {
  const { start, count } = sheet.document.bufferedPageRange();
  const y = PAGE.height - 34;
  for (let page = start; page < start + count; page++) {
    sheet.document.switchToPage(page);
    sheet.document.markContent('Artifact', { type: 'Pagination' });
    const number = `${page + 1} of ${count}`;
    const [first = '', ...more] = sheet.lines(name, TEXT_WIDTH - 60, NOTE);
    sheet.line(more.length === 0 ? first : `${first}…`, PAGE.left, y, NOTE);
    sheet.line(number, PAGE.width - PAGE.right - sheet.widthOf(number, NOTE), y, NOTE);
    sheet.document.endMarkedContent();
  }
}
