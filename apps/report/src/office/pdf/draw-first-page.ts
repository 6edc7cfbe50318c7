import { GRID, INK, LINE, MUTED_INK, PAPER } from '@buildweek/charts';
import type { FirstLook, FirstNumber } from '../first-look.ts';
import { drawChart } from './draw-chart.ts';
import { drawList, listItemHeight } from './draw-section.ts';
import { NOTE, PAGE, type Sheet, TEXT_WIDTH, type TextStyle } from './sheet.ts';

const PROGRAM: TextStyle = { face: 'regular', size: 9, colour: PAPER };
const NAME: TextStyle = { face: 'bold', size: 18, colour: PAPER };
const QUESTION: TextStyle = { face: 'regular', size: 11, colour: PAPER };
const CAUTION: TextStyle = { face: 'bold', size: 9, colour: INK };
const LABEL: TextStyle = { face: 'regular', size: 8.5, colour: MUTED_INK };
/** Letters from which on a number is set smaller. */
const LONG_VALUE = 13;
const BOX_GAP = 12;

function answerStyle(answer: string): TextStyle {
  const size = answer.length > 200 ? 12 : answer.length > 90 ? 14 : 17;
  return { face: 'bold', size, colour: INK };
}

/**
 * Draws the decision in one look: the question, the answer, the numbers that matter, the chart that shows why, and as
 * many of the reasons as there is room for.
 *
 * @returns reasons that the page has no room for
 */
export function drawFirstPage(sheet: Sheet, look: FirstLook): readonly string[] {
  drawHead(sheet, look);
  sheet.leaf('P', () => sheet.paragraph(look.answer, answerStyle(look.answer)));
  sheet.y += 10;
  drawNumbers(sheet, look.numbers);
  const foot =
    look.facts.reduce((sum, fact) => sum + sheet.heightOf(fact.join(': '), TEXT_WIDTH, NOTE) + 2, 10) +
    (look.caution === '' ? 0 : sheet.heightOf(look.caution, TEXT_WIDTH, CAUTION) + 8);
  if (look.chart !== null) drawChart(sheet, look.chart, sheet.room - foot);
  let room = sheet.room - foot;
  const fitting = look.reasons.findIndex((reason) => {
    room -= listItemHeight(sheet, reason);
    return room < 0;
  });
  const shown = fitting < 0 ? look.reasons : look.reasons.slice(0, fitting);
  if (shown.length > 0) drawList(sheet, shown);
  if (look.caution !== '') {
    sheet.leaf('P', () => sheet.paragraph(look.caution, CAUTION));
    sheet.y += 8;
  }
  for (const [term, value] of look.facts) {
    sheet.leaf('P', () => sheet.paragraph(`${term}: ${value}`, NOTE));
    sheet.y += 2;
  }
  return look.reasons.slice(shown.length);
}

function drawHead(sheet: Sheet, { name, question }: FirstLook): void {
  const height =
    sheet.lineHeight(PROGRAM) +
    sheet.heightOf(name, TEXT_WIDTH, NAME) +
    sheet.heightOf(question, TEXT_WIDTH, QUESTION) +
    54;
  sheet.ornament(() => sheet.document.rect(0, 0, PAGE.width, height).fill(LINE));
  sheet.y = 26;
  sheet.leaf('P', () => sheet.paragraph('Buildweek · capacity of a print lab', PROGRAM));
  sheet.y += 4;
  sheet.leaf('H1', () => sheet.paragraph(name, NAME));
  sheet.y += 4;
  sheet.leaf('P', () => sheet.paragraph(question, QUESTION));
  sheet.y = height + 14;
}

/** Draws boxes beside each other, each with a number, its interval and what belongs to it. */
function drawNumbers(sheet: Sheet, numbers: readonly FirstNumber[]): void {
  if (numbers.length === 0) return;
  const width = (TEXT_WIDTH - BOX_GAP * (numbers.length - 1)) / numbers.length;
  const inside = width - 16;
  const textsOf = (number: FirstNumber): [string, TextStyle][] => [
    [number.label, LABEL],
    [number.value, { face: 'bold', size: number.value.length > LONG_VALUE ? 13 : 18, colour: INK }],
    [number.range, LABEL],
    ...(number.beside === '' ? [] : [[number.beside, LABEL] as [string, TextStyle]]),
  ];
  const heightOf = (number: FirstNumber): number =>
    textsOf(number).reduce((sum, [text, style]) => sum + sheet.heightOf(text, inside, style), 14);
  const height = Math.max(...numbers.map(heightOf));
  const top = sheet.y;
  numbers.forEach((number, at) => {
    const left = PAGE.left + at * (width + BOX_GAP);
    sheet.ornament(() => {
      sheet.document.rect(left, top, width, height).lineWidth(0.6).strokeColor(GRID).stroke();
      sheet.document.rect(left, top, 3, height).fill(LINE);
    });
    sheet.leaf('P', () => {
      sheet.y = top + 7;
      for (const [text, style] of textsOf(number))
        sheet.paragraph(text, style, { x: left + 10, width: inside });
    });
  });
  sheet.y = top + height + 14;
}
