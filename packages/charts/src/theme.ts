import type { Config } from 'vega-lite';
import type { ChartSize } from './chart.ts';
import { GRID, INK, MUTED_INK } from './palette.ts';

/**
 * One family with the same widths on every system (the fallback is metric compatible), so that text that was
 * laid out once fits everywhere.
 */
export const FONT = '"Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif';

export const FONT_SIZE: Readonly<Record<ChartSize, number>> = { wide: 13, narrow: 12 };

/** How every chart looks: few lines, dark text, no frame. */
export function themeFor(size: ChartSize): Config {
  const fontSize = FONT_SIZE[size];
  return {
    font: FONT,
    background: 'transparent',
    padding: 4,
    aria: false,
    view: { stroke: null },
    axis: {
      labelFontSize: fontSize,
      labelColor: INK,
      titleFontSize: fontSize,
      titleFontWeight: 'normal',
      titleColor: MUTED_INK,
      titlePadding: 8,
      gridColor: GRID,
      domainColor: MUTED_INK,
      tickColor: MUTED_INK,
      tickSize: 4,
      labelPadding: 4,
      labelFlush: false,
    },
    legend: {
      labelFontSize: fontSize,
      labelColor: INK,
      labelLimit: 300,
      titleFontSize: fontSize,
      titleFontWeight: 'normal',
      titleColor: MUTED_INK,
      symbolSize: 150,
      symbolStrokeWidth: 1,
      rowPadding: 4,
      columnPadding: 18,
    },
    title: { font: FONT, fontSize, fontWeight: 'bold', color: INK, anchor: 'start', offset: 8, limit: 320 },
    text: { font: FONT, fontSize, color: INK },
    concat: { spacing: size === 'wide' ? 26 : 18 },
  };
}
