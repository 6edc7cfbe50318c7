import { createHash } from 'node:crypto';
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
import { COMPARISON_FILE, checkOutput, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import { readChangedScenario, readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import { type PlanOptions, planSettings, withPlanOptions } from '../plans/plan-options.ts';
import { type PlanPlay, playPlans } from '../plans/play-plans.ts';
import { programVersion } from '../program-version.ts';
import { comparisonText } from '../tables/comparison-text.ts';
import { styleFor } from '../terminal/style.ts';
import { wholeNumberOption } from './option-values.ts';

interface CompareOptions extends PlanOptions {
  readonly with: readonly string[];
  readonly replications?: number;
}

/** A plan with the scenario that it comes from. */
interface NamedScenario extends Plan {
  readonly changes: readonly string[];
  readonly file: ScenarioFile;
}

const USUAL_REPLICATIONS = 100;

export function compareCommand(): Command {
  const command = new Command('compare')
    .summary('say what a change of the lab brings, and how sure that is')
    .description(
      'Plays scenarios, or one scenario with changes in its own words, on the same random numbers, and says what differs: each difference with an interval that is corrected for looking at several. The first scenario is what the others are compared with.',
    )
    .argument('<files...>', 'scenario files (YAML)')
    .option(
      '--with <changes>',
      'the first scenario with changes: places and values, as "people / technicians / count: 3"; several with a semicolon; may be given again',
      (value: string, before: readonly string[]) => [...before, value],
      [] as readonly string[],
    )
    .option(
      '--replications <number>',
      `play so many replications of each, at least 20 (default: what the scenario says, or ${USUAL_REPLICATIONS})`,
      wholeNumberOption(20),
    );
  return withPlanOptions(command)
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
  const toStandardOutput = options.json === '-';
  if (options.json !== undefined && !toStandardOutput) {
    checkOutput(options.json, COMPARISON_FILE, options.force);
  }
  if (options.page !== undefined) checkOutput(options.page, REPORT_FILE, options.force);
  const plans = plansOf(paths, options.with);
  const [first] = plans as [NamedScenario];
  const { settings: own } = first.file.reading;
  const settings = planSettings(own, options);
  const currency = currencyOf(plans);
  const standard = standardMeasures(plans.map((plan) => plan.lab));
  const replications = options.replications ?? own.replications ?? USUAL_REPLICATIONS;
  const answer = await playPlans(
    {
      command: 'compare',
      path: paths.join(' '),
      texts: plans.flatMap(({ name, file }) => [name, file.text]),
      lab: first.lab,
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
      return compared === null
        ? null
        : answerOf(plans, compared, play, { replications, level: settings.level, currency });
    },
  );
  await keep(answer, options);
  if (!toStandardOutput) process.stdout.write(comparisonText(answer, styleFor(process.stdout)));
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
  { ignoredWeeks, warnings, settings }: PlanPlay,
  { replications, level, currency }: { replications: number; level: number; currency: string | null },
): ComparisonAnswer {
  return {
    format: 'buildweek comparison',
    version: COMPARISON_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    currency,
    run: {
      seed: settings.seed,
      replications,
      weeks: settings.weeks,
      ignoredWeeks,
      capWeeks: settings.capWeeks,
      level,
    },
    differencesLevel: compared.differencesLevel,
    plans: plans.map(({ name, changes, file, lab }, index) => ({
      name,
      changes: [...changes],
      scenario: {
        name: file.reading.lab.name,
        text: file.text,
        hash: createHash('sha256').update(file.text).digest('hex'),
      },
      measures: [...(compared.measures[index] ?? [])],
      ...handOf(lab, compared.measures[index] ?? [], settings.weeks),
    })),
    pairs: [...compared.pairs],
    cautions: [
      ...new Map(plans.flatMap(({ lab }) => cautionsOf(lab)).map((one) => [one.topic, one])).values(),
    ],
    warnings: [...warnings],
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

async function keep(answer: ComparisonAnswer, { json, page }: CompareOptions): Promise<void> {
  const text = `${JSON.stringify(answer, null, 1)}\n`;
  if (json === '-') process.stdout.write(text);
  else if (json !== undefined) writeOutput(json, text);
  if (page === undefined) return;
  // Charts take a while to load: without a page the command does without.
  const { renderComparison } = await import('@buildweek/report');
  writeOutput(page, renderComparison(answer));
  process.stderr.write(`The page is in ${page}. Open it in a browser.\n`);
}
