export { renderComparison } from './render-comparison.ts';
export { renderPart } from './render-part.ts';
export { renderReport } from './render-report.ts';
