import type { BudgetTarget, Economics, Lab, Target } from '@buildweek/model';
import { GROWTH_VERSION, type GrowthAnswer } from '@buildweek/results';
import { AskedGrowthError, askedGrowth } from '@buildweek/scenario';
import {
  type AskedTargets,
  askedTargets,
  cautionsOf,
  growthByHand,
  growthStudy,
  judgedMeasures,
} from '@buildweek/study';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { GROWTH_FILE } from '../files/output-file.ts';
import { readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import {
  answeredScenario,
  checkKept,
  keepAnswer,
  leftOutWords,
  planRun,
  tellWarnings,
  warningWords,
} from '../plans/plan-answer.ts';
import {
  type PlanOptions,
  planReplications,
  planSettings,
  type ReplicationsOptions,
  withPlanOptions,
  withReplicationsOption,
} from '../plans/plan-options.ts';
import { playPlans } from '../plans/play-plans.ts';
import { programVersion } from '../program-version.ts';
import { growthText } from '../tables/growth-text.ts';
import { styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';
import { wholeNumberOption } from './option-values.ts';

interface GrowthOptions extends PlanOptions, ChangesOptions, ReplicationsOptions {
  readonly by?: string;
  readonly months: number;
  readonly lead: number;
}

/** A year, which is what budgets are made for. */
const USUAL_MONTHS = 12;
/** From an order until it works. Common practice, no source: delivery, commissioning and training of a desktop machine, or hiring. */
const USUAL_LEAD = 12;

export function growthCommand(): Command {
  const command = new Command('growth')
    .summary('say until when the lab is large enough, and what to order by when')
    .description(
      'Plays the lab at the demand of each month to come: in which month each target fails when nothing is bought, what one more machine, station or person would restore, until when, and by when it has to be ordered.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input')
    .option('--by <growth>', 'how demand grows, as "4 % a month" (default: the growth in the scenario)')
    .option('--months <number>', 'look so many months ahead', wholeNumberOption(1), USUAL_MONTHS)
    .option(
      '--lead <weeks>',
      'weeks from an order until it works, where the scenario states none',
      wholeNumberOption(0),
      USUAL_LEAD,
    );
  return withPlanOptions(withReplicationsOption(withChangesOption(command), 'each month'))
    .addHelpText(
      'after',
      `
Examples:
  buildweek growth scenarios/demo.yaml --by "4 % a month"
  buildweek growth scenarios/demo.yaml --by "30 % a year" --months 36 --page growth.html`,
    )
    .action(growth);
}

async function growth(path: string, options: GrowthOptions): Promise<void> {
  checkKept(options, GROWTH_FILE);
  const file = readScenarioFile(path, options.with);
  const { lab, settings: own, targets: statedTargets, economics } = file.reading;
  const growthPerMonth = options.by === undefined ? null : growthOf(options.by);
  checkGrowth(lab, growthPerMonth);
  const asked = askedTargets(lab, statedTargets);
  const { targets } = asked;
  if (targets.length === 0) {
    throw badInput(
      'The scenario has no targets and promises nothing, so nothing can fail. Say what is to hold, as\n  targets:\n    - 90 % of jobs within 5 working days',
    );
  }
  const settings = planSettings(own, options);
  const replications = planReplications(own, options);
  tellWarnings(file);
  const answer = await playPlans(
    {
      command: 'growth',
      path,
      texts: [file.text, String(growthPerMonth)],
      labs: [lab],
      settings,
      measures: (of) => judgedMeasures(of, targets),
    },
    options,
    async (play): Promise<GrowthAnswer | null> => {
      const question = {
        lab,
        targets,
        growthPerMonth,
        months: options.months,
        replications,
        level: settings.level,
        economics,
        leadWeeks: options.lead,
        budgets: budgetsOf(statedTargets),
      };
      const found = await growthStudy(question, play.plans, (total) => play.expect(total, true));
      if (found === null) return null;
      return {
        format: 'buildweek growth',
        version: GROWTH_VERSION,
        program: { name: 'buildweek', version: programVersion() },
        scenario: answeredScenario(file),
        run: planRun(play, replications),
        currency: economics?.currency ?? null,
        growth: options.by ?? 'as the scenario states it',
        ...found,
        byHand: growthByHand(lab, growthPerMonth, options.months, settings.weeks),
        assumptions: [
          ...startWords(file),
          ...assumptionsOf(
            asked,
            options,
            budgetsOf(statedTargets).map(({ wording }) => wording),
            economics,
          ),
        ],
        cautions: cautionsOf(lab),
        warnings: [...warningWords(file), ...play.warnings],
      };
    },
  );
  await keepAnswer(answer, options, growthText(answer, styleFor(process.stdout)), async () =>
    (await import('@buildweek/report')).renderGrowth(answer),
  );
}

function growthOf(text: string): number {
  try {
    return askedGrowth(text);
  } catch (error) {
    if (!(error instanceof AskedGrowthError)) throw error;
    throw badInput(`--by: ${error.message}\n  write:    --by "${error.write}"`);
  }
}

/** Whether the scenario says how its demand grows. */
export function statesGrowth(lab: Lab): boolean {
  return lab.demand.some(({ arrivals }) => arrivals.kind === 'poisson' && arrivals.growthPerMonth !== 0);
}

function checkGrowth(lab: Lab, growthPerMonth: number | null): void {
  const grows = lab.demand.some(
    ({ arrivals }) => arrivals.kind === 'poisson' || (arrivals.kind === 'renewal' && growthPerMonth !== null),
  );
  if (!grows) throw badInput('Jobs on stated dates, or kept in the lab, do not grow: state jobs per week.');
  if (growthPerMonth === 0)
    throw badInput('Demand that grows by 0 % stays as it is: "buildweek run" says what becomes of it.');
  if (growthPerMonth !== null || statesGrowth(lab)) return;
  throw badInput('The scenario states no growth. Say how demand grows: --by "4 % a month"');
}

function budgetsOf(targets: readonly Target[]): BudgetTarget[] {
  return targets.filter((target) => target.kind === 'budget');
}

/** Dates of a plan that states none are no dates of the calendar. */
function startWords({ reading: { assumptions, lab } }: ScenarioFile): string[] {
  const start = assumptions.find(({ what }) => what === 'starts');
  return start?.source === 'default of the program'
    ? [`The scenario has no "starts", so months and dates count from ${lab.startDate}.`]
    : [];
}

function assumptionsOf(
  { targets, areUsual, leftOut }: AskedTargets,
  { lead }: GrowthOptions,
  budgets: readonly string[],
  economics: Economics | null,
): string[] {
  const priced = economics !== null && economics.equipment.length > 0;
  return [
    ...(areUsual
      ? [`The scenario has no target that playing could judge, so this is taken: ${targets[0]?.wording}.`]
      : []),
    ...leftOutWords(leftOut.filter((wording) => !budgets.includes(wording))),
    'When all targets have been missed three months in a row, the months behind are not played.',
    'Each month is played as if its demand had come to stay: with the calendar of the measured weeks, after the weeks that are left out. A lab that is overloaded gets worse the longer it is.',
    `From an order until it works: ${priced ? 'what the scenario states with its prices; else ' : ''}${lead} weeks${lead === USUAL_LEAD ? ' (common practice, no source; --lead says otherwise)' : ''}.`,
    ...(priced
      ? []
      : [
          'The scenario states no prices, so what restores the targets stands in the order of what it gains.',
        ]),
    'When a purchase is not enough any more, the next is looked for among what gained in the first trial before the rest, the cheapest that serves, at most four in all: not the cheapest way over all months.',
    'One more person works the hours and has the skills of the group; one more machine needs no further carriers, space or connection.',
  ];
}
