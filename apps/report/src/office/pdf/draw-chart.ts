/// <reference path="./svg-to-pdfkit.d.ts" />
import type { Chart } from '@buildweek/charts';
import SVGtoPDF from 'svg-to-pdfkit';
import { chartDrawing } from '../charts/chart-drawing.ts';
import { plainText } from '../plain-text.ts';
import { CAPTION, NOTE, PAGE, type Sheet, TEXT_WIDTH } from './sheet.ts';

/** Points that a chart takes on a page of its own, title and words included; no more than the page has. */
export function chartHeight(sheet: Sheet, chart: Chart): number {
  const { width, height } = chartDrawing(chart);
  return Math.min(HIGHEST, around(sheet, chart) + (height * TEXT_WIDTH) / width);
}

/** Points for the words above and below a drawing. */
function around(sheet: Sheet, { title, footnote }: Chart): number {
  return sheet.heightOf(title, TEXT_WIDTH, CAPTION) + sheet.heightOf(footnote, TEXT_WIDTH, NOTE) + 14;
}

/** The most of a page that one drawing takes. */
const HIGHEST = PAGE.height - PAGE.top - PAGE.bottom;

/**
 * Draws a chart in lines and letters, as wide as the text, with its title and how to read it; never over the edge of
 * a page.
 *
 * @param highest points that the drawing may take at most
 */
export function drawChart(sheet: Sheet, chart: Chart, highest = HIGHEST): void {
  const drawing = chartDrawing(chart);
  const words = around(sheet, chart);
  const scale = Math.min(TEXT_WIDTH / drawing.width, (Math.min(highest, HIGHEST) - words) / drawing.height);
  const height = drawing.height * scale;
  sheet.ensure(height + words);
  sheet.leaf('P', () => sheet.paragraph(chart.title, CAPTION));
  sheet.y += 4;
  sheet.leaf(
    'Figure',
    () => {
      sheet.document.save().translate(PAGE.left, sheet.y).scale(scale);
      SVGtoPDF(sheet.document, drawing.svg, 0, 0, {
        assumePt: true,
        fontCallback: (_family, bold) => (bold ? 'bold' : 'regular'),
        warningCallback: () => undefined,
      });
      sheet.document.restore();
    },
    { alt: plainText(`${chart.title}. ${chart.description}`) },
  );
  sheet.y += height + 4;
  sheet.leaf('P', () => sheet.paragraph(chart.footnote, NOTE));
  sheet.y += 12;
}
