import type { Lab } from '@buildweek/model';
import {
  COMPARISON_VERSION,
  type ComparedPlan,
  type ComparisonAnswer,
  type PlanMeasure,
} from '@buildweek/results';
import {
  type ComparedPlans,
  cautionsOf,
  comparePlans,
  handBeside,
  handSentence,
  moneyMeasures,
  type Plan,
  standardMeasures,
} from '@buildweek/study';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { COMPARISON_FILE } from '../files/output-file.ts';
import { readChangedScenario, readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import {
  answeredScenario,
  checkKept,
  keepAnswer,
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
import { type PlanPlay, playPlans } from '../plans/play-plans.ts';
import { programVersion } from '../program-version.ts';
import { comparisonText } from '../tables/comparison-text.ts';
import { styleFor } from '../terminal/style.ts';
import { gathered } from './option-values.ts';

interface CompareOptions extends PlanOptions, ReplicationsOptions {
  readonly with: readonly string[];
}

/** A plan with the scenario that it comes from. */
interface NamedScenario extends Plan {
  readonly changes: readonly string[];
  readonly file: ScenarioFile;
}

export function compareCommand(): Command {
  const command = new Command('compare')
    .summary('say what a change of the lab brings, and how sure that is')
    .description(
      'Plays scenarios, or one scenario with changes in its own words, on the same random numbers, and says what differs: each difference with an interval that is corrected for looking at several. All are compared with the first, and up to four with each other.',
    )
    .argument('<files...>', 'scenario files (YAML)')
    .option(
      '--with <changes>',
      'the first scenario with changes: places and values, as "people / technicians / count: 3"; several with a semicolon; may be given again',
      gathered,
      [] as readonly string[],
    );
  return withPlanOptions(withReplicationsOption(command, 'each plan'))
    .addHelpText(
      'after',
      `
Examples:
  buildweek compare scenarios/demo.yaml --with "technicians / count: 3"
  buildweek compare scenarios/demo.yaml --with "resin / count: 4" --with "technicians / count: 3; evening help / count: 0"
  buildweek compare today.yaml proposed.yaml --page comparison.html`,
    )
    .action(compare);
}

async function compare(paths: readonly string[], options: CompareOptions): Promise<void> {
  checkKept(options, COMPARISON_FILE);
  const plans = plansOf(paths, options.with);
  const [first] = plans as [NamedScenario];
  const { settings: own } = first.file.reading;
  const settings = planSettings(own, options);
  const currency = currencyOf(plans);
  const standard = standardMeasures(plans.map((plan) => plan.lab));
  const replications = planReplications(own, options);
  tellWarnings(first.file);
  const answer = await playPlans(
    {
      command: 'compare',
      path: paths.join(' '),
      texts: plans.flatMap(({ name, file }) => [name, file.text]),
      labs: [first.lab, ...plans.map(({ lab }) => lab)],
      settings,
      measures: (lab, { name }) => {
        const own = plans.find((plan) => plan.name === name)?.file.reading.economics ?? null;
        return [...standard, ...moneyMeasures(lab, currency === null ? null : own)];
      },
    },
    options,
    async (play) => {
      play.expect(replications * plans.length, false);
      const compared = await comparePlans(plans, play.plans, replications, settings.level, currency);
      return compared === null ? null : answerOf(plans, compared, play, replications, currency);
    },
  );
  await keepAnswer(answer, options, comparisonText(answer, styleFor(process.stdout)), async () =>
    (await import('@buildweek/report')).renderComparison(answer),
  );
}

function plansOf(paths: readonly string[], changes: readonly string[]): NamedScenario[] {
  const [path = ''] = paths;
  const files = paths.map((one) => ({ path: one, file: readScenarioFile(one) }));
  const first = files[0]?.file as ScenarioFile;
  const names = files.map(({ file }) => file.reading.lab.name);
  const plans = [
    ...files.map(({ path: own, file }) => {
      const { name } = file.reading.lab;
      const isUnique = names.filter((other) => other === name).length === 1;
      const isOnly = files.length === 1;
      return { name: isOnly ? 'as it is' : isUnique ? name : own, lab: file.reading.lab, changes: [], file };
    }),
    ...changes.map((text) => {
      const file = readChangedScenario(first, path, text);
      return { name: text, lab: file.reading.lab, changes: text.split(';').map((one) => one.trim()), file };
    }),
  ];
  if (plans.length < 2) {
    throw badInput(
      'There is one scenario and nothing to compare it with. Give another file, or a change: --with "people / technicians / count: 3"',
    );
  }
  const repeated = plans.find(({ name }, index) => plans.findIndex((other) => other.name === name) < index);
  if (repeated !== undefined) throw badInput(`“${repeated.name}” is given twice.`);
  return plans;
}

/**
 * The currency in which all plans are reckoned; null when one of them has no money.
 * @throws Failure for bad input when there are two
 */
function currencyOf(plans: readonly NamedScenario[]): string | null {
  const currencies = [...new Set(plans.map(({ file }) => file.reading.economics?.currency ?? null))];
  const named = currencies.filter((currency) => currency !== null);
  if (named.length > 1) {
    throw badInput(
      `The scenarios reckon in different currencies: ${named.join(' and ')}. Bring them to one.`,
    );
  }
  return currencies.length === 1 ? (currencies[0] ?? null) : null;
}

function answerOf(
  plans: readonly NamedScenario[],
  compared: ComparedPlans,
  play: PlanPlay,
  replications: number,
  currency: string | null,
): ComparisonAnswer {
  return {
    format: 'buildweek comparison',
    version: COMPARISON_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    currency,
    run: planRun(play, replications),
    differencesLevel: compared.differencesLevel,
    plans: plans.map(({ name, changes, file, lab }, index) => ({
      name,
      changes: [...changes],
      scenario: answeredScenario(file),
      measures: [...(compared.measures[index] ?? [])],
      ...handOf(lab, compared.measures[index] ?? [], play.settings.weeks),
    })),
    pairs: [...compared.pairs],
    cautions: [
      ...new Map(plans.flatMap(({ lab }) => cautionsOf(lab)).map((one) => [one.topic, one])).values(),
    ],
    warnings: [...new Set(plans.flatMap(({ file }) => warningWords(file))), ...play.warnings],
  };
}

function handOf(
  lab: Lab,
  measures: readonly PlanMeasure[],
  weeks: number,
): Pick<ComparedPlan, 'handHours' | 'handCalculation' | 'handSentence'> {
  const { handHours, handCalculation } = handBeside(lab, weeks);
  return { handHours, handCalculation, handSentence: handSentence(measures, handHours) };
}
