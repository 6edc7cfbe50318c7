import { GRID, INK, LINE, MUTED_INK, PAPER } from '@buildweek/charts';
import type { FirstLook, FirstNumber } from '../first-look.ts';
import { plainText } from '../plain-text.ts';
import { CONTENT_HEIGHT, CONTENT_WIDTH, colour, type Deck, SLIDE, shortened, TYPEFACE } from './deck.ts';
import { addChartPicture, type Place } from './slide-chart.ts';
import type { Slide, SlideText, SlideTextOptions } from './slide-writer.ts';

const BOX_GAP = 0.3;
const BOX_TOP = 3.75;
const BOX_HEIGHT = 2.5;
/** Of numbers that stand alone, without what they are today. */
const LOW_BOX_HEIGHT = 1.6;

/** The decision: the question, what is proposed, and the numbers that matter with their intervals. */
export function decisionSlide(deck: Deck, look: FirstLook, notes: readonly string[]): void {
  const slide = deck.firstSlide(look.name);
  slide.addText(shortened(plainText(look.question), 260), {
    ...text(look.question.length > 110 ? 14 : 18, colour(PAPER)),
    x: SLIDE.left,
    y: 1.15,
    w: CONTENT_WIDTH,
    h: 0.6,
  });
  slide.addText(shortened(plainText(look.answer), 480), {
    ...text(look.answer.length > 200 ? 18 : look.answer.length > 90 ? 24 : 32, colour(INK), true),
    x: SLIDE.left,
    y: 2.05,
    w: CONTENT_WIDTH,
    h: 1.55,
  });
  const width =
    (CONTENT_WIDTH - BOX_GAP * Math.max(0, look.numbers.length - 1)) / Math.max(1, look.numbers.length);
  const height = look.numbers.some(({ beside }) => beside !== '') ? BOX_HEIGHT : LOW_BOX_HEIGHT;
  look.numbers.forEach((number, at) => {
    addNumber(slide, number, { x: SLIDE.left + at * (width + BOX_GAP), y: BOX_TOP, w: width, h: height });
  });
  if (look.caution !== '') {
    slide.addText(plainText(look.caution.replace(/: see .*$/, ': see the cautions.')), {
      ...text(14, colour(INK), true),
      x: SLIDE.left,
      y: 6.4,
      w: CONTENT_WIDTH,
      h: 0.45,
    });
  }
  slide.addText(plainText(look.facts.map((fact) => fact.join(': ')).join('   ·   ')), {
    ...text(11, colour(MUTED_INK)),
    x: SLIDE.left,
    y: SLIDE.height - 0.5,
    w: CONTENT_WIDTH,
    h: 0.35,
  });
  slide.addNotes(plainText([look.answer, ...look.reasons, ...notes].join('\n\n')));
}

function text(fontSize: number, color: string, bold = false): SlideTextOptions {
  return { fontFace: TYPEFACE, fontSize, color, bold, margin: 0, valign: 'middle', fit: 'shrink' };
}

function addNumber(slide: Slide, { label, value, range, beside }: FirstNumber, place: Place): void {
  const { x, y, w, h } = place;
  slide.addShape('rect', {
    ...place,
    fill: { color: colour(PAPER) },
    line: { color: colour(GRID), width: 1 },
  });
  slide.addShape('rect', { ...place, w: 0.08, fill: { color: colour(LINE) } });
  const run = (words: string, fontSize: number, color: string, bold: boolean): SlideText => ({
    text: plainText(words),
    options: { fontFace: TYPEFACE, fontSize, color: colour(color), bold, breakLine: true },
  });
  slide.addText(
    [
      run(label, label.length > 45 ? 12 : 14, MUTED_INK, false),
      run(value, value.length > 13 ? 24 : 34, INK, true),
      run(range, range.length > 60 ? 12 : 14, INK, false),
      ...(beside === '' ? [] : [run(shortened(beside, 170), 12, MUTED_INK, false)]),
    ],
    {
      x: x + 0.2,
      y: y + 0.1,
      w: w - 0.3,
      h: h - 0.2,
      margin: 0,
      valign: 'top',
      fit: 'shrink',
    },
  );
}

/** Why: the one chart. Nothing where there is none. */
export function reasonSlide(deck: Deck, { chart, reasons }: FirstLook, notes: readonly string[]): void {
  if (chart === null) return;
  const slide = deck.slide(chart.title, [chart.footnote, chart.description, ...reasons, ...notes]);
  addChartPicture(slide, chart, { x: SLIDE.left, y: SLIDE.top, w: CONTENT_WIDTH, h: CONTENT_HEIGHT - 0.45 });
  addFootnote(slide, chart.footnote);
}

/** How to read a chart, small below it. */
export function addFootnote(slide: Slide, footnote: string): void {
  slide.addText(plainText(footnote), {
    ...text(footnote.length > 260 ? 9 : 11, colour(MUTED_INK)),
    x: SLIDE.left,
    y: SLIDE.height - 0.95,
    w: CONTENT_WIDTH,
    h: 0.42,
  });
}
