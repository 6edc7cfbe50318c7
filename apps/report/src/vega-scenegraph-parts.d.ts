// Parts of vega that work but are not in its own type declarations.
declare module 'vega' {
  interface TextItem {
    readonly fontSize?: number;
    readonly fontWeight?: string | number;
    readonly limit?: number;
  }

  /** How text is measured; `width` may be replaced where there is no canvas. */
  const textMetrics: { width: (item: TextItem, text: unknown) => number };

  /** Draws a scene as the text of an SVG document, at once. */
  class SVGStringRenderer {
    initialize(element: null, width: number, height: number, origin: readonly [number, number]): this;
    render(scene: unknown): this;
    svg(): string;
  }
}
