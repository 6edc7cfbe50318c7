import { Resvg } from '@resvg/resvg-js';
import type { ChartImage } from '../../chart-image.ts';
import { FONT_FAMILY, fontPath } from '../fonts.ts';

/** So many dots for each CSS pixel, so that charts stay sharp on projectors and paper. */
export const PNG_SCALE = 2;

/**
 * A drawing as PNG on white. The drawer leaves text out without a word where it knows no typeface, so it is given one
 * and told to look for no others: the same drawing gives the same bytes on every machine.
 */
export function chartPng({ svg }: ChartImage): Uint8Array {
  const drawer = new Resvg(svg, {
    background: 'white',
    fitTo: { mode: 'zoom', value: PNG_SCALE },
    font: {
      loadSystemFonts: false,
      fontFiles: [fontPath('regular'), fontPath('bold')],
      defaultFontFamily: FONT_FAMILY,
    },
  });
  return drawer.render().asPng();
}
