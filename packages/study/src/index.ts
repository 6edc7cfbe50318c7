export { type AwayFound, type AwayQuestion, awayStudy, spansOfAbsence } from './away/away-study.ts';
export { weekMeasures } from './away/week-measures.ts';
export { BUILD_COLUMNS, type BuildColumn, type BuildRow, type RowMistake } from './calibrate/build-row.ts';
export { type Calibration, type CalibrationOutcome, calibrate } from './calibrate/calibrate.ts';
export { withDigits } from './calibrate/written-number.ts';
export { type DecisionFacts, orderSentences, proposalOf } from './decision/decision-words.ts';
export { type KeyFacts, keyNumbersOf } from './decision/key-numbers.ts';
export { type ChangedChoice, changedChoices, type OptionPlan, optionPlans } from './decision/option-plans.ts';
export { type ReasonFacts, reasonSentences } from './decision/reason-sentences.ts';
export {
  type DoubtsFound,
  type DoubtsQuestion,
  doubtsStudy,
  replicationsOfDoubts,
} from './doubts/doubts-study.ts';
export type { ReplicationExecutor, StopSignal } from './executor.ts';
export {
  type CausedWait,
  type JobStory,
  type JobStretch,
  jobStoryOf,
  slowestJobs,
} from './follow/job-story.ts';
export { type Replay, replayOf } from './follow/replay.ts';
export { MADE_OUTSIDE, stepWords } from './follow/step-words.ts';
export { middleWeek, type WatchedLab, watchedWeekOf } from './follow/watched-week.ts';
export { type WeekItem, type WeekListing, weekListingOf } from './follow/week-listing.ts';
export { type GrowthFound, type GrowthQuestion, growthStudy } from './growth/growth-study.ts';
export type { WeekRange } from './hand/expected-demand.ts';
export type { FewestCount } from './hand/fewest-counts.ts';
export { type HandAnswer, handAnswer } from './hand/hand-answer.ts';
export { handCalculation } from './hand/hand-calculation.ts';
export { handLeadTimes, type PartEstimate } from './hand/lead-time/hand-lead-times.ts';
export { awayByHand } from './hand/questions/away-by-hand.ts';
export { doubtsByHand } from './hand/questions/doubts-by-hand.ts';
export { growthByHand } from './hand/questions/growth-by-hand.ts';
export { decideIgnoredWeeks } from './ignored-weeks.ts';
export { createInProcessExecutor } from './in-process-executor.ts';
export { committedCost, committedCostPerYear, purchases } from './money/committed-cost.ts';
export { clockSpreadWords, clockWords } from './part/clock-words.ts';
export { verdictOf } from './part/verdict.ts';
export {
  type AskedWay,
  type PartComparison,
  type PartQuestion,
  waysOfMaking,
} from './part/ways-of-making.ts';
export { BEST_MEASURES, type BestMeasure } from './plans/best-measures.ts';
export { bestPlan } from './plans/best-plan.ts';
export { type ComparedPlans, comparePlans, measuresOf } from './plans/compare-plans.ts';
export { FEWEST_REPLICATIONS, findPlan } from './plans/find-plan.ts';
export { handBeside, handSentence } from './plans/hand-beside.ts';
export { moneyMeasures } from './plans/money-measures.ts';
export {
  type ObservationJournal,
  type ObservationOptions,
  ObservedPlans,
} from './plans/observed-plans.ts';
export type { Plan } from './plans/plan.ts';
export { cheapestPlan, type PlanFindings, type PlanQuestion } from './plans/plan-answer.ts';
export { constraintValue, planConstraints } from './plans/plan-constraints.ts';
export {
  type CandidatePlan,
  candidatePlans,
  type PlanChoice,
  type PlanVariant,
} from './plans/plan-space.ts';
export type { MeasuresOfPlan, ReplicationMeasure } from './plans/replication-measure.ts';
export { ruledOut } from './plans/ruled-out.ts';
export { standardMeasures } from './plans/standard-measures.ts';
export { observedTargets, targetMeasures } from './plans/target-measures.ts';
export { UnanswerableError } from './plans/unanswerable-error.ts';
export { variationName, variationPlace } from './plans/variation-name.ts';
export type { StudyProgress } from './progress.ts';
export { LabMoments, stateHour } from './promise/lab-moments.ts';
export { closedSpans, reachOf } from './promise/lab-opening.ts';
export { type OpenJobs, openJobsStudy } from './promise/open-jobs-study.ts';
export { openJobsVerdict } from './promise/open-jobs-words.ts';
export { pinnedVerdict } from './promise/pinned-words.ts';
export {
  type AskedRequestWay,
  isNumbered,
  jobName,
  type PromisePlay,
  type PromiseQuestion,
} from './promise/promise-question.ts';
export { PROMISE_LEVEL, PROMISED } from './promise/promised-dates.ts';
export { playsOfRequest, requestStudy } from './promise/request-study.ts';
export { requestVerdict } from './promise/request-words.ts';
export { sinceVerdict } from './promise/since-study.ts';
export type { Before } from './promise/since-yesterday.ts';
export type { ReplicationTemplate } from './replications.ts';
export { runStudy, type StudyOptions, type StudyOutcome, type StudyResults } from './run-study.ts';
export { compareStaff, type StaffPlanAsked } from './staff/compare-staff.ts';
export { staffMeasures } from './staff/staff-measures.ts';
export { breachWords } from './staff/staff-words.ts';
export { startEarlier } from './start-earlier.ts';
export { type AskedTargets, askedTargets, judgedMeasures } from './targets/judged-targets.ts';
export { knownCost } from './targets/known-budget.ts';
export {
  isObserved,
  type ObservedTarget,
  observeTarget,
  type TargetObservation,
} from './targets/observation.ts';
export { targetMeaning } from './targets/target-meaning.ts';
export { mondayBefore } from './validate/log-times.ts';
export {
  type ReplayFound,
  type ReplayPlay,
  type ReplayQuestion,
  replayStudy,
} from './validate/replay-study.ts';
export { cautionsOf } from './words/cautions.ts';
export { loadWarnings } from './words/warnings.ts';
