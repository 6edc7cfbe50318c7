import type { PlanAnswer } from '@buildweek/results';
import type { ChangeWording } from '@buildweek/scenario';
import {
  BEST_MEASURES,
  type BestMeasure,
  bestPlan,
  cheapestPlan,
  FEWEST_REPLICATIONS,
  observedTargets,
  type PlanFindings,
} from '@buildweek/study';
import { Command, Option } from 'commander';
import { badInput } from '../failure.ts';
import { PLAN_FILE } from '../files/output-file.ts';
import { readChangedScenario, readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import { checkKept, keepAnswer, tellWarnings, warningWords } from '../plans/plan-answer.ts';
import { type PlanOptions, planSettings, withPlanOptions } from '../plans/plan-options.ts';
import { type PlanPlay, playPlans } from '../plans/play-plans.ts';
import { ALPHA, INDIFFERENT_SHARE, planAnswerOf, planSearchSetup } from '../plans/search-plans.ts';
import { nextSteps } from '../tables/next-steps.ts';
import { planText } from '../tables/plan-text.ts';
import { styleFor } from '../terminal/style.ts';
import { statesGrowth } from './growth.ts';
import { amountOption, gathered, shareOption, wholeNumberOption } from './option-values.ts';

interface HowManyOptions extends PlanOptions {
  readonly vary: readonly string[];
  readonly target: readonly string[];
  readonly indifference?: number;
  readonly atMost: number;
  readonly best?: BestMeasure;
  readonly budget?: number;
}

/** What makes no difference, unless an option says it: a share of the time that jobs take today. */
const INDIFFERENT_TIME = 0.05;
/** Common for a lab that is asked for more; no source. Whoever asks knows better. */
const EXAMPLE_OF_GROWTH = '2 % a month';

export function howManyCommand(): Command {
  const command = new Command('how-many')
    .summary('find the cheapest plan that meets the targets')
    .description(
      'Tries plans in order of what they cost, each on the same random numbers, until one is known to meet every target of the scenario: how many machines, stations and people, in which hours. Shows what comes close and why it falls short, what one more of each would bring, and how sure all that is.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input')
    .option(
      '--vary <choice>',
      'what may be chosen, as "resin: 1 to 5" (default: what the scenario says under "may vary"); may be given again',
      gathered,
      [] as readonly string[],
    )
    .option(
      '--target <sentence>',
      'what the plan has to reach, as "90 % of jobs within 3 days" (default: the targets of the scenario); may be given again',
      gathered,
      [] as readonly string[],
    )
    .addOption(
      new Option(
        '--best <measure>',
        'instead of the cheapest plan that meets the targets, the best within the budget: late has the smallest share of late jobs, p90 the shortest time for nine of ten jobs',
      ).choices(Object.keys(BEST_MEASURES)),
    )
    .addOption(
      new Option(
        '--budget <amount>',
        'what the best plan may cost in a year, in the currency of the scenario',
      ).argParser(amountOption),
    )
    .option(
      '--indifference <share>',
      "a plan so close to a target, or to the best, counts as right (default: 0.02; for --best p90 0.05 of today's time)",
      shareOption,
    )
    .option(
      '--at-most <number>',
      'replications after which a plan is left undecided',
      wholeNumberOption(FEWEST_REPLICATIONS),
      1000,
    );
  return withPlanOptions(command)
    .addHelpText(
      'after',
      `
Examples:
  buildweek how-many scenarios/demo.yaml
  buildweek how-many scenarios/demo.yaml --target "90 % of rush jobs within 3 days" --vary "technicians: 1 to 4" --vary "resin: 2 to 5"
  buildweek how-many scenarios/demo.yaml --page plan.html --json plan.json`,
    )
    .action(howMany);
}

async function howMany(path: string, options: HowManyOptions): Promise<void> {
  checkKept(options, PLAN_FILE);
  const stated = readScenarioFile(path);
  const file = asked(stated, path, options);
  const { lab, variations } = file.reading;
  const settings = planSettings(file.reading.settings, options);
  checkQuestion(file, path, options);
  const { plans, labs, measures, question } = planSearchSetup(file, path, settings.level);
  tellWarnings(file);
  const answer = await playPlans(
    { command: 'how-many', path, texts: [file.text], labs, settings, measures },
    options,
    async (play) => {
      play.expect(plans.length * 10, true);
      const { atMost: most, best, budget = null } = options;
      const indifference = options.indifference ?? (best === 'p90' ? INDIFFERENT_TIME : INDIFFERENT_SHARE);
      const search = { indifference, alpha: ALPHA, most, weeks: settings.weeks };
      const findings =
        best === undefined
          ? await cheapestPlan(question, play.plans, search)
          : await bestPlan(question, play.plans, {
              ...search,
              by: best,
              budget,
              playedWeeks: settings.weeks + settings.capWeeks,
            });
      return findings === null ? null : answerOf(file, findings, play, replacedTargets(stated, options));
    },
  );
  const style = styleFor(process.stdout);
  const growth = statesGrowth(lab) ? null : EXAMPLE_OF_GROWTH;
  const text = `${planText(answer, style)}${nextSteps(answer, path, variations, options.target, growth, style)}`;
  await keepAnswer(answer, options, text, async () => (await import('@buildweek/report')).renderPlan(answer));
}

/** The scenario with the targets and choices of the command line in the place of its own. */
function asked(file: ScenarioFile, path: string, { vary, target }: HowManyOptions): ScenarioFile {
  const changes: ChangeWording[] = [];
  if (target.length > 0) {
    const value = `[${target.map((sentence) => JSON.stringify(sentence)).join(', ')}]`;
    changes.push({ wording: `targets: ${value}`, path: ['targets'], value });
  }
  if (vary.length > 0) {
    const value = `{ ${vary.join(', ')} }`;
    changes.push({ wording: `may vary: ${value}`, path: ['may vary'], value });
  }
  return changes.length === 0 ? file : readChangedScenario(file, path, changes);
}

function checkQuestion({ reading }: ScenarioFile, path: string, { best, budget }: HowManyOptions): void {
  const { lab, targets, variations, economics } = reading;
  if (budget !== undefined && best === undefined) {
    throw badInput(
      '--budget is for --best late or --best p90. For the cheapest plan write a target: --target "budget at most 250000 per year"',
    );
  }
  if (budget !== undefined && economics === null) {
    throw badInput(
      `${path} states no prices, so no plan has a cost to hold against --budget. Write a section "money:" and prices; see "buildweek schema scenario".`,
    );
  }
  if (best === undefined && observedTargets(targets).length === 0) {
    throw badInput(
      `${path} has no target that the search could go by. Write one, as\n  targets:\n    - 90 % of jobs within 3 days\nor give it: --target "90 % of jobs within 3 days"`,
    );
  }
  if (variations.length > 0) return;
  const name = lab.machines[0]?.name ?? lab.people[0]?.name ?? lab.stations[0]?.name ?? 'resin';
  throw badInput(
    `${path} does not say what may be chosen. Write it, as\n  may vary:\n    ${name}: 1 to 4\nor give it: --vary "${name}: 1 to 4"`,
  );
}

/** A plan that meets what was asked may miss what the scenario asks. */
function replacedTargets({ reading }: ScenarioFile, { target }: HowManyOptions): string[] {
  if (target.length === 0 || reading.targets.length === 0) return [];
  const own = reading.targets.map(({ wording }) => `“${wording}”`).join(', ');
  return [`The targets of the scenario were not looked at, because --target stands in their place: ${own}.`];
}

function answerOf(
  file: ScenarioFile,
  findings: PlanFindings,
  play: PlanPlay,
  warnings: readonly string[],
): PlanAnswer {
  return planAnswerOf(file, findings, play, [...warnings, ...warningWords(file), ...play.warnings]);
}
