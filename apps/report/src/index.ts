export { renderPart } from './render-part.ts';
export { renderReport } from './render-report.ts';
