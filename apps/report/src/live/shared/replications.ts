/** Replications of the first answer: an interval needs so many. */
export const ROUGH_REPLICATIONS = 20;
/** What was played is kept, so that it can be asked again: more of it than this fills the memory of a page. */
const MOST = 200;

/** Replications of the last answer: as many as the plan was played with, as far as a page can keep them. */
export function sharpReplications(ofPlan: number): number {
  return Math.min(MOST, Math.max(ROUGH_REPLICATIONS, ofPlan));
}
