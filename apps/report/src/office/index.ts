export { CHART_INDEX, type ChartFile, chartFilesOf } from './charts/chart-files-of.ts';
export { pdfOf } from './pdf/pdf-of.ts';
export { slidesOf } from './slides/slides-of.ts';
export { csvOf } from './table/csv-of.ts';
export { workbookOf } from './table/workbook-of.ts';
