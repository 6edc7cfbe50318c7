import { GRID, INK, LINE, MUTED_INK } from '@buildweek/charts';
import { plainText } from '../plain-text.ts';
import type { ErrorBars } from './error-bars.ts';
import { type Slide, type SlideFile, SlideWriter } from './slide-writer.ts';

/** Inches of a slide of the shape 16:9, and of what stands at its edges. */
export const SLIDE = { width: 13.333, height: 7.5, left: 0.5, right: 0.5, top: 1.25, bottom: 0.55 } as const;
export const CONTENT_WIDTH = SLIDE.width - SLIDE.left - SLIDE.right;
export const CONTENT_HEIGHT = SLIDE.height - SLIDE.top - SLIDE.bottom;

/** Every office has it, or one with the same widths. */
export const TYPEFACE = 'Arial';

/** A colour as slides write it. */
export function colour(code: string): string {
  return code.replace('#', '').toUpperCase();
}

/** A set of slides that is being made. */
export class Deck {
  readonly file: SlideFile;
  /** Intervals of native charts in the order in which the charts were made; null for one without. */
  readonly intervals: (readonly ErrorBars[] | null)[] = [];
  private readonly name: string;
  private count = 0;

  constructor(title: string, name: string) {
    this.name = name;
    this.file = new SlideWriter();
    this.file.layout = 'LAYOUT_WIDE';
    this.file.title = plainText(title);
    this.file.subject = 'Capacity of a print lab';
    this.file.company = '';
    this.file.theme = { headFontFace: TYPEFACE, bodyFontFace: TYPEFACE };
  }

  /** A slide with a title that says what it shows, the name of the lab and its number at the foot. */
  slide(title: string, notes: readonly string[]): Slide {
    const slide = this.file.addSlide();
    this.count += 1;
    slide.background = { color: 'FFFFFF' };
    slide.addText(plainText(title), {
      x: SLIDE.left,
      y: 0.3,
      w: CONTENT_WIDTH,
      h: 0.8,
      fontFace: TYPEFACE,
      fontSize: titleSize(title),
      bold: true,
      color: colour(INK),
      valign: 'middle',
      margin: 0,
      fit: 'shrink',
    });
    slide.addShape('rect', { x: 0, y: 0, w: SLIDE.width, h: 0.12, fill: { color: colour(LINE) } });
    slide.addShape('line', {
      x: SLIDE.left,
      y: SLIDE.height - 0.45,
      w: CONTENT_WIDTH,
      h: 0,
      line: { color: colour(GRID), width: 0.75 },
    });
    this.foot(slide, shortened(this.name, 100), 'left');
    this.foot(slide, String(this.count), 'right');
    slide.addNotes(plainText(notes.filter((note) => note !== '').join('\n\n')));
    return slide;
  }

  /** Counts a slide that was made by hand. */
  countOne(): void {
    this.count += 1;
  }

  private foot(slide: Slide, text: string, align: 'left' | 'right'): void {
    slide.addText(plainText(text), {
      x: align === 'left' ? SLIDE.left : SLIDE.width - SLIDE.right - 1,
      y: SLIDE.height - 0.42,
      w: align === 'left' ? CONTENT_WIDTH - 1.2 : 1,
      h: 0.3,
      align,
      fontFace: TYPEFACE,
      fontSize: 10,
      color: colour(MUTED_INK),
      margin: 0,
    });
  }
}

/** Size of a title so that it takes at most two lines, points. */
function titleSize(title: string): number {
  if (title.length <= 60) return 26;
  if (title.length <= 130) return 20;
  return title.length <= 220 ? 15 : 12;
}

/** A text cut to a length; what is cut off is marked. */
export function shortened(text: string, most: number): string {
  const letters = Array.from(text);
  return letters.length <= most ? text : `${letters.slice(0, most - 1).join('')}…`;
}
