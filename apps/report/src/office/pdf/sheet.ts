import { INK, keptTogether, MUTED_INK } from '@buildweek/charts';
import { type FontFace, fontBytes } from '../fonts.ts';
import { plainText } from '../plain-text.ts';
import { textLines } from './text-lines.ts';
import { seenFromLeft } from './writing-direction.ts';

/** A4 in points, and its margins. */
export const PAGE = { width: 595.28, height: 841.89, left: 44, right: 44, top: 48, bottom: 54 } as const;
export const TEXT_WIDTH = PAGE.width - PAGE.left - PAGE.right;
const LOWEST = PAGE.height - PAGE.bottom;
const LINE_HEIGHT = 1.32;

/** How text is set. */
export interface TextStyle {
  readonly face: FontFace;
  readonly size: number;
  readonly colour: string;
}

export const BODY: TextStyle = { face: 'regular', size: 9.5, colour: INK };
export const NOTE: TextStyle = { face: 'regular', size: 8, colour: MUTED_INK };
export const CAPTION: TextStyle = { face: 'bold', size: 9, colour: INK };

/** What a part of the document is, for readers that speak it. */
export type Role =
  | 'P'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'L'
  | 'LI'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Caption'
  | 'Sect';

/** Where on the pages of a document the next thing stands, and how text is set on it. */
export class Sheet {
  readonly document: PDFKit.PDFDocument;
  /** Distance of the next thing from the top of the page, points. */
  y: number = PAGE.top;
  private readonly parents: PDFKit.PDFStructureElement[] = [];

  constructor(document: PDFKit.PDFDocument) {
    this.document = document;
    document.registerFont('regular', fontBytes('regular'));
    document.registerFont('bold', fontBytes('bold'));
  }

  /** Makes a part of the document, inside the one that is open, of what is drawn meanwhile. */
  part(role: Role, draw: () => void, options: { readonly alt?: string } = {}): void {
    const element = this.document.struct(role, options);
    const parent = this.parents.at(-1);
    if (parent === undefined) this.document.addStructure(element);
    else parent.add(element);
    this.parents.push(element);
    draw();
    this.parents.pop();
    element.end();
  }

  /** The same for what is drawn itself: the innermost part. */
  leaf(role: Role, draw: () => void, options: { readonly alt?: string } = {}): void {
    const element = this.document.struct(role, options, [draw]);
    const parent = this.parents.at(-1);
    if (parent === undefined) this.document.addStructure(element);
    else parent.add(element);
  }

  /** What is drawn for the eye alone. */
  ornament(draw: () => void): void {
    this.document.markContent('Artifact', { type: 'Layout' });
    draw();
    this.document.endMarkedContent();
  }

  /** Points that are left on the page. */
  get room(): number {
    return LOWEST - this.y;
  }

  newPage(): void {
    this.document.addPage();
    this.y = PAGE.top;
  }

  /** Goes to the next page where less than a height is left. Returns whether it did. */
  ensure(height: number): boolean {
    if (this.room >= height || this.y === PAGE.top) return false;
    this.newPage();
    return true;
  }

  /** A text as lines that fit a width. */
  lines(text: string, width: number, { face, size }: TextStyle): string[] {
    this.document.font(face, size);
    return textLines(plainText(keptTogether(text)), width, (one) => this.document.widthOfString(one));
  }

  widthOf(text: string, { face, size }: TextStyle): number {
    return this.document.font(face, size).widthOfString(plainText(text));
  }

  lineHeight({ size }: TextStyle): number {
    return size * LINE_HEIGHT;
  }

  heightOf(text: string, width: number, style: TextStyle): number {
    return this.lines(text, width, style).length * this.lineHeight(style);
  }

  /** Sets one line at a place. */
  line(line: string, x: number, y: number, { face, size, colour }: TextStyle): void {
    this.document.font(face, size).fillColor(colour).text(seenFromLeft(line), x, y, { lineBreak: false });
  }

  /** Sets lines below each other from the place that is reached, on as many pages as they take. */
  paragraph(
    text: string,
    style: TextStyle,
    place: { readonly x?: number; readonly width?: number } = {},
  ): void {
    const { x = PAGE.left, width = TEXT_WIDTH } = place;
    const height = this.lineHeight(style);
    for (const line of this.lines(text, width, style)) {
      this.ensure(height);
      this.line(line, x, this.y, style);
      this.y += height;
    }
  }
}
