import type { StudySettings } from '@buildweek/model';
import {
  DECISION_VERSION,
  type DecisionAnswer,
  type DecisionOption,
  DOUBTS_VERSION,
  type DoubtsAnswer,
  type Results,
} from '@buildweek/results';
import {
  askedTargets,
  type ChangedChoice,
  type ComparedPlans,
  cautionsOf,
  changedChoices,
  cheapestPlan,
  comparePlans,
  doubtsByHand,
  doubtsStudy,
  judgedMeasures,
  keyNumbersOf,
  measuresOf,
  type OptionPlan,
  optionPlans,
  orderSentences,
  proposalOf,
  reasonSentences,
  replicationsOfDoubts,
  runStudy,
  standardMeasures,
} from '@buildweek/study';
import { resultsOf } from '../commands/run.ts';
import { readChangedScenario, type ScenarioFile } from '../files/scenario-file.ts';
import { answeredScenario, planRun, warningWords } from '../plans/plan-answer.ts';
import type { PlanPlay } from '../plans/play-plans.ts';
import { ALPHA, INDIFFERENT_SHARE, type PlanSearchSetup, planAnswerOf } from '../plans/search-plans.ts';
import { programVersion } from '../program-version.ts';

/** What is asked of a decision. */
export interface DecisionQuestion {
  readonly file: ScenarioFile;
  readonly path: string;
  readonly setup: PlanSearchSetup;
  readonly settings: StudySettings;
  /** Of each option that is shown. */
  readonly replications: number;
  /** Replications after which a plan of the search is left undecided. */
  readonly most: number;
  /** Worlds that are drawn for what is in doubt. */
  readonly worlds: number;
}

/**
 * Finds the plan to recommend, sets it against today and what stands around it, plays it in full, and asks what is in
 * doubt of it.
 *
 * @returns null when somebody stopped
 */
export async function decisionOf(question: DecisionQuestion, play: PlanPlay): Promise<DecisionAnswer | null> {
  const { file, setup, settings, replications, most } = question;
  const { plans, counts, question: asked } = setup;
  const { reading } = file;
  play.expect(plans.length * 10 + replications * 6, true);
  const findings = await cheapestPlan(asked, play.plans, {
    indifference: INDIFFERENT_SHARE,
    alpha: ALPHA,
    most,
    weeks: settings.weeks,
  });
  if (findings === null) return null;
  const search = planAnswerOf(file, findings, play, [...warningWords(file), ...play.warnings]);
  const options = optionPlans(search.shown, plans, counts);
  const compared = await comparedOptions(options, play, question);
  if (compared === null) return null;
  const changes = (option: OptionPlan): ChangedChoice[] =>
    changedChoices(option.shown.choices, search.varied, reading.variations);
  const chosen = options.find(({ role }) => role === 'recommended');
  const recommendedFile =
    chosen === undefined
      ? file
      : readChangedScenario(
          file,
          question.path,
          changes(chosen)
            .map(({ change }) => change)
            .join('; '),
        );
  const today = await resultsFor(file, question, play);
  if (today === null) return null;
  const recommended = chosen === undefined ? null : await resultsFor(recommendedFile, question, play);
  if (chosen !== undefined && recommended === null) return null;
  const doubts = await doubtsOf(recommendedFile, question, play);
  if (doubts === null) return null;
  const isMet = search.chosen !== null;
  const currency = reading.economics?.currency ?? null;
  const facts = {
    changes: chosen === undefined ? [] : changes(chosen),
    isMet,
    money: (recommended ?? today).money,
    moneyToday: recommended === null ? null : today.money,
  };
  const measuresFor = (role: OptionPlan['role']): DecisionOption['measures'] | null => {
    const position = options.findIndex((option) => option.role === role);
    return position < 0 ? null : [...(compared.measures[position] ?? [])];
  };
  const shownOptions = options.map(
    (option, position): DecisionOption => ({
      role: option.role,
      name: option.shown.name,
      changes: changes(option).map(({ change }) => change),
      meets: option.shown.verdict,
      why: option.shown.why,
      committedCost: option.shown.committedCost,
      purchase: option.shown.purchase,
      // The search stops a plan as soon as it is clear; here each has as many replications as the others.
      targets: option.shown.targets.map((target, index) => ({
        ...target,
        value: compared.measures[position]?.[asked.firstTarget + index]?.value ?? target.value,
      })),
      measures: [...(compared.measures[position] ?? [])].slice(0, asked.firstTarget),
    }),
  );
  return {
    format: 'buildweek decision',
    version: DECISION_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    scenarioName: reading.lab.name,
    currency,
    question: questionOf(reading.targets.map(({ wording }) => wording)),
    proposal: proposalOf(facts),
    reasons: [
      ...reasonSentences({ options: shownOptions, pairs: compared.pairs, currency }),
      ...orderSentences(facts),
      ...(doubts.answer?.verdict ?? []),
    ],
    run: planRun(play, replications),
    keyNumbers: keyNumbersOf({
      recommended: recommended ?? today,
      today: recommended === null ? null : today,
      measures: measuresFor('recommended') ?? measuresFor('today') ?? [],
      measuresToday: recommended === null ? null : measuresFor('today'),
    }),
    options: shownOptions,
    pairs: [...compared.pairs],
    differencesLevel: compared.differencesLevel,
    today,
    recommended,
    search,
    doubts: doubts.answer,
    cautions: (recommended ?? today).cautions,
    warnings: [...warningWords(file), ...play.warnings],
  };
}

function questionOf(targets: readonly string[]): string {
  const quoted = targets.map((target) => `“${target}”`).join(', ');
  return `How many machines and people does the lab need, at the least cost, for ${quoted}?`;
}

/** The options on common random numbers; of a single one only what it comes to. */
async function comparedOptions(
  options: readonly OptionPlan[],
  play: PlanPlay,
  { replications, settings, setup }: DecisionQuestion,
): Promise<ComparedPlans | null> {
  const [first, second] = options;
  if (first !== undefined && second === undefined) {
    const observations = await play.plans.observe(first.plan, replications);
    if (observations === null) return null;
    const measures = measuresOf(play.plans.measuresOf(first.plan), observations, settings.level);
    return { measures: [measures], pairs: [], differencesLevel: settings.level };
  }
  return comparePlans(
    options.map(({ plan }) => plan),
    play.plans,
    replications,
    settings.level,
    setup.question.currency,
  );
}

/** A lab played in full, on the same replications as the comparison. */
async function resultsFor(
  file: ScenarioFile,
  { settings, replications }: DecisionQuestion,
  { ignoredWeeks, executor, stop }: PlanPlay,
): Promise<Results | null> {
  const { lab, targets, economics } = file.reading;
  const played = { ...settings, ignoredWeeks: ignoredWeeks.weeks, replications, precision: null };
  const outcome = await runStudy(lab, played, executor, { stop, targets, economics });
  if (outcome.kind === 'too few' || outcome.results.run.replications < replications) return null;
  const results = resultsOf(file, outcome.results);
  return { ...results, run: { ...results.run, ignoredWeeks } };
}

/** What is in doubt of the recommendation, where the scenario states doubts; null when somebody stopped. */
async function doubtsOf(
  file: ScenarioFile,
  { settings, replications, worlds }: DecisionQuestion,
  play: PlanPlay,
): Promise<{ readonly answer: DoubtsAnswer | null } | null> {
  const { lab, doubts, targets } = file.reading;
  const { targets: asked } = askedTargets(lab, targets);
  if (doubts === null || doubts.length === 0 || asked.length === 0) return { answer: null };
  const standard = standardMeasures([lab]);
  const plans = play.apart('doubts', (of) => [...judgedMeasures(of, asked), ...standard]);
  const question = {
    lab,
    doubts,
    targets: asked,
    measure: null,
    replications,
    worlds,
    seed: settings.seed,
    level: settings.level,
    weeks: settings.weeks,
  };
  play.expect(play.plans.replications + replicationsOfDoubts(question), false);
  const found = await doubtsStudy(question, plans);
  if (found === null) return null;
  return {
    answer: {
      format: 'buildweek doubts',
      version: DOUBTS_VERSION,
      program: { name: 'buildweek', version: programVersion() },
      scenario: answeredScenario(file),
      run: planRun(play, replications),
      worlds,
      ...found,
      byHand: doubtsByHand(lab, doubts, settings.weeks),
      assumptions: ['Each factor is drawn by itself from PERT over its range.'],
      cautions: cautionsOf(lab),
      warnings: [],
    },
  };
}
