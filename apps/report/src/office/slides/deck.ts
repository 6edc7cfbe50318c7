import { GRID, INK, LINE, MUTED_INK, PAPER } from '@buildweek/charts';
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

/** The ground of every slide but the first, and of the first: their names among the layouts of the file. */
const GROUND = 'Buildweek';
const FIRST_GROUND = 'Buildweek, first slide';
/** Where a title stands, and how it is set. */
const TITLE = {
  name: 'title',
  type: 'title',
  x: SLIDE.left,
  w: CONTENT_WIDTH,
  h: 0.8,
  fontFace: TYPEFACE,
  bold: true,
  align: 'left',
  valign: 'middle',
  margin: 0,
} as const;
const FOOT_TOP = SLIDE.height - 0.42;

/** A set of slides that is being made. */
export class Deck {
  readonly file: SlideFile;
  /** Intervals of native charts in the order in which the charts were made; null for one without. */
  readonly intervals: (readonly ErrorBars[] | null)[] = [];

  constructor(title: string, name: string) {
    this.file = new SlideWriter();
    this.file.layout = 'LAYOUT_WIDE';
    this.file.title = plainText(title);
    this.file.subject = 'Capacity of a print lab';
    this.file.company = '';
    this.file.theme = { headFontFace: TYPEFACE, bodyFontFace: TYPEFACE };
    const small = { fontFace: TYPEFACE, fontSize: 10, color: colour(MUTED_INK) };
    this.file.defineSlideMaster({
      title: GROUND,
      background: { color: colour(PAPER) },
      objects: [
        { rect: { x: 0, y: 0, w: SLIDE.width, h: 0.12, fill: { color: colour(LINE) } } },
        {
          line: {
            x: SLIDE.left,
            y: SLIDE.height - 0.45,
            w: CONTENT_WIDTH,
            h: 0,
            line: { color: colour(GRID), width: 0.75 },
          },
        },
        {
          text: {
            text: shortened(plainText(name), 100),
            options: { ...small, x: SLIDE.left, y: FOOT_TOP, w: CONTENT_WIDTH - 1.2, h: 0.3, margin: 0 },
          },
        },
        {
          placeholder: {
            options: { ...TITLE, color: colour(INK), y: 0.3 },
            text: '',
          },
        },
      ],
      slideNumber: {
        ...small,
        x: SLIDE.width - SLIDE.right - 1,
        y: FOOT_TOP,
        w: 1,
        h: 0.3,
        align: 'right',
        margin: 0,
      },
    });
  }

  /** The first slide, with the name of the lab as its title on a dark band. */
  firstSlide(name: string): Slide {
    this.file.defineSlideMaster({
      title: FIRST_GROUND,
      background: { color: colour(PAPER) },
      objects: [
        { rect: { x: 0, y: 0, w: SLIDE.width, h: 1.9, fill: { color: colour(LINE) } } },
        { placeholder: { options: { ...TITLE, color: colour(PAPER), y: 0.35 }, text: '' } },
      ],
    });
    const slide = this.file.addSlide({ masterName: FIRST_GROUND });
    slide.addText(shortened(plainText(name), 120), {
      placeholder: 'title',
      fontSize: name.length > 60 ? 18 : 30,
    });
    return slide;
  }

  /** A slide with a title that says what it shows, the name of the lab and its number at the foot. */
  slide(title: string, notes: readonly string[]): Slide {
    const slide = this.file.addSlide({ masterName: GROUND });
    slide.addText(shortened(plainText(title), 380), { placeholder: 'title', fontSize: titleSize(title) });
    slide.addNotes(plainText(notes.filter((note) => note !== '').join('\n\n')));
    return slide;
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
