import type { Chart } from '@buildweek/charts';
import { chartDrawing } from '../charts/chart-drawing.ts';
import { chartPng } from '../charts/chart-png.ts';
import { plainText } from '../plain-text.ts';
import { shortened } from './deck.ts';
import type { Slide } from './slide-writer.ts';

/** A place on a slide, inches. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Text alternatives longer than this are refused by some programs. */
const LONGEST_ALTERNATIVE = 2000;

/** Puts the picture of a chart into a place, as large as it can be, with what it shows in words. */
export function addChartPicture(
  slide: Slide,
  chart: Chart,
  place: Place,
  size: 'wide' | 'narrow' = 'wide',
): void {
  const drawing = chartDrawing(chart, size);
  const scale = Math.min(place.w / drawing.width, place.h / drawing.height);
  const w = drawing.width * scale;
  const h = drawing.height * scale;
  slide.addImage({
    data: `image/png;base64,${Buffer.from(chartPng(drawing)).toString('base64')}`,
    x: place.x + (place.w - w) / 2,
    y: place.y,
    w,
    h,
    altText: shortened(plainText(`${chart.title}. ${chart.description}`), LONGEST_ALTERNATIVE),
  });
}
