import type { ReportDocument } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { officeCharts, titleOf } from '../document.ts';
import { chartDrawing } from './chart-drawing.ts';
import { chartPng, PNG_SCALE } from './chart-png.ts';

/** A file to be written into a folder. */
export interface ChartFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** The file that tells what the others are. */
export const CHART_INDEX = 'charts.json';

/**
 * Every chart as drawing (SVG), picture (PNG, twice as many dots as CSS pixels) and vega-lite specification, and an
 * index of them with titles, descriptions and footnotes. The same document gives the same bytes.
 */
export function chartFilesOf(document: ReportDocument): ChartFile[] {
  resetSVGDefIds();
  const charts = officeCharts(document);
  const files: ChartFile[] = [];
  const index = charts.map((chart) => {
    const drawing = chartDrawing(chart);
    const names = { svg: `${chart.id}.svg`, png: `${chart.id}.png`, spec: `${chart.id}.vl.json` };
    files.push(
      { name: names.svg, content: drawing.svg },
      { name: names.png, content: chartPng(drawing) },
      { name: names.spec, content: `${JSON.stringify(chart.spec, null, 2)}\n` },
    );
    return {
      id: chart.id,
      title: chart.title,
      description: chart.description,
      footnote: chart.footnote,
      width: drawing.width,
      height: drawing.height,
      pngScale: PNG_SCALE,
      files: names,
    };
  });
  const list = {
    format: 'buildweek charts',
    version: 1,
    program: document.program,
    of: titleOf(document),
    charts: index,
  };
  return [...files, { name: CHART_INDEX, content: `${JSON.stringify(list, null, 2)}\n` }];
}
