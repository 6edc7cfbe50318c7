export { renderComparison } from './render-comparison.ts';
export { renderPart } from './render-part.ts';
export { renderPlan } from './render-plan.ts';
export { renderReport } from './render-report.ts';
