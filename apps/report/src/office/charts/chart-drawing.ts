import { CHART_WIDTH, type Chart, type ChartSize } from '@buildweek/charts';
import { type ChartImage, chartImage } from '../../chart-image.ts';
import { FONT_FAMILY, FONT_SCALE } from '../fonts.ts';
import { plainText } from '../plain-text.ts';

/** Drawings by their charts: how high one is has to be known before the place for it is. */
const drawings = new WeakMap<Chart, ChartImage>();

/**
 * A chart as SVG in the typeface that comes with the program, so that every drawer of it has the same letters.
 *
 * @param size for what width the chart was laid out
 */
export function chartDrawing(chart: Chart, size: ChartSize = 'wide'): ChartImage {
  const known = drawings.get(chart);
  if (known !== undefined) return known;
  const { svg, width, height } = chartImage(chart.spec, CHART_WIDTH[size], false);
  const drawing = {
    svg: plainText(svg).replace(/<(?:text|g|path|line|rect)[^>]*>/g, tagWithTypeface),
    width,
    height,
  };
  drawings.set(chart, drawing);
  return drawing;
}

/** A tag as every drawer takes it: the typeface that comes along, and no line called dashed that has no gaps. */
function tagWithTypeface(tag: string): string {
  const face = /font-weight="(?:bold|[6-9]00)"/.test(tag) ? 'bold' : 'regular';
  return tag
    .replace(/ stroke-dasharray="\d+,0"/, '')
    .replace(/font-family="[^"]*"/, `font-family="${FONT_FAMILY}"`)
    .replace(
      /(?<=font-size=")([\d.]+)(?=px")/,
      (length) => `${Math.round(Number(length) * FONT_SCALE[face] * 100) / 100}`,
    );
}
