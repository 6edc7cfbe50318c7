/// <reference path="./vega-scenegraph-parts.d.ts" />
import { FONT, textWidth } from '@buildweek/charts';
import { logger, None, parse, SVGStringRenderer, textMetrics, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { compactGroups } from './compact-groups.ts';
import { compactPath } from './compact-path.ts';
import { mergePaths } from './merge-paths.ts';

const FONT_SIZE = 11;
/** Room for strokes and descenders at the edge, CSS pixels. */
const MARGIN = 3;

/** A drawn chart: the text of an SVG element, and its size in CSS pixels. */
export interface ChartImage {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Empty data is no reason to write to the console of whoever renders a page. */
const silent = logger(None);

/** Bounds of a scene, as vega keeps them on its root item. */
interface SceneRoot {
  readonly bounds: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
}

/** Runs with text widths of the page's font instead of vega's rough guess where there is no canvas. */
function withTextWidths<Result>(action: () => Result): Result {
  const before = textMetrics.width;
  textMetrics.width = (item, text) => {
    const bold = item.fontWeight === 'bold' || Number(item.fontWeight) >= 600;
    const width = textWidth(String(text ?? '').trim(), item.fontSize ?? FONT_SIZE, bold);
    return item.limit !== undefined && item.limit > 0 ? Math.min(item.limit, width) : width;
  };
  try {
    return action();
  } finally {
    textMetrics.width = before;
  }
}

/** Attributes that say nothing which is not so anyway, or that the whole drawing says once. */
const IDLE_ATTRIBUTE =
  / (?:role|class|aria-roledescription|aria-hidden|pointer-events|font-family|xmlns:xlink|version)="[^"]*"| opacity="1"| font-weight="normal"| transform="translate\(0,0\)"/g;

/** Drops what draws nothing, and digits nobody sees. Works inside tags only, so that no text is touched. */
function compact(svg: string): string {
  return compactGroups(
    mergePaths(
      svg
        .replace(/<path class="(?:background|foreground)"[^>]*? d="(?:M0,0h0v0h0Z)?"[^>]*\/>/g, '')
        .replace(/<[^>]+>/g, (tag) =>
          tag
            .replace(IDLE_ATTRIBUTE, '')
            .replace(/(?<= d=")[^"]+/, compactPath)
            .replace(
              /(?<= (?:d|transform|x|y|x2|y2|width|height)="[^"]*)-?\d+\.\d{2,}(?:e-\d+)?/g,
              (number) => String(Math.round(Number(number) * 10) / 10),
            ),
        )
        // Lines of a text start at the x of their own, which a moved text gives them.
        .replace(
          /(<text [^>]*)transform="translate\(([^,")]*),([^,")]*)\)"(?=[^>]*>[^<]*<\/text>)/g,
          '$1x="$2" y="$3"',
        )
        .replace('<svg ', `<svg font-family="${FONT.replaceAll('"', "'")}" `),
    ),
  );
}

/**
 * Draws a chart as SVG, in any JavaScript engine, without a screen and without evaluating code: expressions go
 * through the interpreter.
 *
 * @param spec a vega-lite specification
 * @param leastWidth a drawing that is narrower is given room on its right, so that charts that are scaled to the
 *   same width keep the same size of text; CSS pixels
 * @param isCompact whether what draws nothing is dropped and what elements share is said once, for a page that is mailed
 */
export function chartImage(spec: TopLevelSpec, leastWidth = 0, isCompact = true): ChartImage {
  return withTextWidths(() => {
    const runtime = parse(compile(spec, { logger: silent }).spec, undefined, { ast: true });
    const view = new View(runtime, { expr: expressionInterpreter, renderer: 'none', logger: silent });
    view.run();
    const root = (view.scenegraph() as unknown as { readonly root: SceneRoot }).root;
    const { x1, y1, x2, y2 } = root.bounds;
    const width = Math.max(leastWidth, Math.ceil(x2 - x1) + 2 * MARGIN);
    const height = Math.ceil(y2 - y1) + 2 * MARGIN;
    const svg = new SVGStringRenderer()
      .initialize(null, width, height, [MARGIN - x1, MARGIN - y1])
      .render(root)
      .svg();
    view.finalize();
    return {
      svg: isCompact ? compact(svg) : svg,
      width,
      height,
    };
  });
}
