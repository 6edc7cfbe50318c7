export { renderAway } from './render-away.ts';
export { renderComparison } from './render-comparison.ts';
export { renderDoubts } from './render-doubts.ts';
export { renderGrowth } from './render-growth.ts';
export { renderPart } from './render-part.ts';
export { renderPlan } from './render-plan.ts';
export { renderReport } from './render-report.ts';
export { renderStaff } from './render-staff.ts';
