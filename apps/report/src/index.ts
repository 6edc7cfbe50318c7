export { renderReport } from './render-report.ts';
