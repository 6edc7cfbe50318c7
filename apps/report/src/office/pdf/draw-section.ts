import { INK } from '@buildweek/charts';
import type { Block, Section } from '../content/block.ts';
import { plainText } from '../plain-text.ts';
import { chartHeight, drawChart } from './draw-chart.ts';
import { drawGrid, MOST_KEPT } from './draw-grid.ts';
import { BODY, CAPTION, NOTE, PAGE, type Sheet, TEXT_WIDTH, type TextStyle } from './sheet.ts';

const TITLE: TextStyle = { face: 'bold', size: 16, colour: INK };
const INDENT = 12;
/** A heading does not stand alone at the foot of a page: so much of words and tables has to fit below it. */
const BELOW_TITLE = 130;
/** Of a heading with the words below it. */
const TITLE_AND_LEDE = 70;

/** Draws a section with its heading, which is a bookmark too. */
export function drawSection(sheet: Sheet, { title, blocks }: Section): void {
  if (sheet.y !== PAGE.top) sheet.y += 14;
  sheet.ensure(heightOfStart(sheet, blocks));
  sheet.document.outline.addItem(plainText(title));
  sheet.part('Sect', () => {
    sheet.leaf('H2', () => sheet.paragraph(title, TITLE));
    sheet.y += 6;
    for (const block of blocks) drawBlock(sheet, block);
  });
}

/** Points that a heading needs below it: all of a chart, or of a small table, that its section begins with. */
function heightOfStart(sheet: Sheet, [first, second]: readonly Block[]): number {
  const chart = [first, second].find((block) => block?.kind === 'chart');
  if (chart?.kind === 'chart') return TITLE_AND_LEDE + chartHeight(sheet, chart.chart);
  return first?.kind === 'grid' ? TITLE_AND_LEDE + MOST_KEPT : BELOW_TITLE;
}

function drawBlock(sheet: Sheet, block: Block): void {
  switch (block.kind) {
    case 'lede':
      sheet.leaf('P', () => sheet.paragraph(block.text, BODY));
      sheet.y += 8;
      return;
    case 'note':
      sheet.leaf('P', () => sheet.paragraph(block.text, NOTE));
      sheet.y += 10;
      return;
    case 'heading':
      sheet.ensure(50);
      sheet.leaf('H3', () => sheet.paragraph(block.text, CAPTION));
      sheet.y += 4;
      return;
    case 'list':
      drawList(sheet, block.items);
      return;
    case 'facts':
      drawFacts(sheet, block.facts);
      return;
    case 'chart':
      drawChart(sheet, block.chart);
      return;
    case 'grid':
      drawGrid(sheet, block);
  }
}

/** Points that an item of a list takes. */
export function listItemHeight(sheet: Sheet, item: string): number {
  return sheet.heightOf(item, TEXT_WIDTH - INDENT, BODY) + 3;
}

/** Draws a list with bullets. */
export function drawList(sheet: Sheet, items: readonly string[]): void {
  sheet.part('L', () => {
    for (const item of items) {
      sheet.ensure(sheet.lineHeight(BODY));
      sheet.leaf('LI', () => {
        sheet.line('•', PAGE.left, sheet.y, BODY);
        sheet.paragraph(item, BODY, { x: PAGE.left + INDENT, width: TEXT_WIDTH - INDENT });
      });
      sheet.y += 3;
    }
  });
  sheet.y += 6;
}

/** Draws terms with what is said of them. */
function drawFacts(sheet: Sheet, facts: readonly (readonly [string, string])[]): void {
  for (const [term, text] of facts) {
    sheet.ensure(2 * sheet.lineHeight(BODY));
    sheet.leaf('P', () => {
      sheet.paragraph(term, CAPTION);
      sheet.paragraph(text, BODY, { x: PAGE.left + INDENT, width: TEXT_WIDTH - INDENT });
    });
    sheet.y += 5;
  }
  sheet.y += 6;
}
