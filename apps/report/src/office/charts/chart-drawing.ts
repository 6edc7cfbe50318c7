import { CHART_WIDTH, type Chart, type ChartSize } from '@buildweek/charts';
import { type ChartImage, chartImage } from '../../chart-image.ts';
import { FONT_FAMILY, FONT_SCALE } from '../fonts.ts';
import { plainText } from '../plain-text.ts';

/**
 * A chart as SVG in the typeface that comes with the program, so that every drawer of it has the same letters.
 *
 * @param size for what width the chart was laid out
 */
export function chartDrawing(chart: Chart, size: ChartSize = 'wide'): ChartImage {
  const { svg, width, height } = chartImage(chart.spec, CHART_WIDTH[size]);
  return {
    svg: plainText(svg)
      // A line without gaps, which some drawers refuse to call dashed.
      .replaceAll(/ stroke-dasharray="\d+,0"/g, '')
      .replace(/(<svg [^>]*?)font-family="[^"]*"/, `$1font-family="${FONT_FAMILY}"`)
      .replace(
        /(?<=<text[^>]* font-size=")([\d.]+)(?=px")/g,
        (length) => `${Math.round(Number(length) * FONT_SCALE * 100) / 100}`,
      ),
    width,
    height,
  };
}
