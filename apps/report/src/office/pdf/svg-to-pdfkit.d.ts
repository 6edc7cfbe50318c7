declare module 'svg-to-pdfkit' {
  export interface SvgOptions {
    readonly width?: number;
    readonly height?: number;
    readonly assumePt?: boolean;
    readonly preserveAspectRatio?: string;
    readonly fontCallback?: (family: string, bold: boolean, italic: boolean) => string;
    readonly warningCallback?: (warning: string) => void;
  }
  export default function SVGtoPDF(
    document: PDFKit.PDFDocument,
    svg: string,
    x: number,
    y: number,
    options?: SvgOptions,
  ): void;
}
