import type { Doubt, Lab } from '@buildweek/model';
import { DOUBTS_VERSION, type DoubtsAnswer } from '@buildweek/results';
import { usualDoubts } from '@buildweek/scenario';
import {
  type AskedTargets,
  askedTargets,
  cautionsOf,
  doubtsByHand,
  doubtsStudy,
  judgedMeasures,
  replicationsOfDoubts,
  standardMeasures,
} from '@buildweek/study';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { DOUBTS_FILE } from '../files/output-file.ts';
import { readScenarioFile } from '../files/scenario-file.ts';
import { askedMeasure } from '../plans/asked-measure.ts';
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
import { doubtsText } from '../tables/doubts-text.ts';
import { styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';
import { wholeNumberOption } from './option-values.ts';

interface DoubtsOptions extends PlanOptions, ChangesOptions, ReplicationsOptions {
  readonly of?: string;
  readonly worlds: number;
}

/** Enough to tell 87 % within about five points to either side, and shares of ten doubts apart. */
const USUAL_WORLDS = 400;

export function doubtsCommand(): Command {
  const command = new Command('doubts')
    .summary('say which assumptions matter, and whether the plan holds if they are wrong')
    .description(
      'Takes the ranges under "doubts" in the scenario (or usual ones, where it has none): sets each to either end, one at a time; then draws all of them together, one world for each replication, and says in which share of these worlds the targets still hold, and which assumption is worth measuring first.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input')
    .option(
      '--of <measure>',
      'what effects are looked at for: a measure, or a part of its name (default: the target that fails most often, else the lead time that nine of ten jobs keep)',
    )
    .option('--worlds <number>', 'draw so many worlds, at least 20', wholeNumberOption(20), USUAL_WORLDS);
  return withPlanOptions(withReplicationsOption(withChangesOption(command), 'each end of a range'))
    .addHelpText(
      'after',
      `
In the scenario, as shares of what it says:
  doubts:
    demand: 80 to 130 %
    times of hand work: 90 to 140 %, usually 110
    failed builds of powder: 50 to 200 %

Examples:
  buildweek doubts scenarios/demo.yaml
  buildweek doubts scenarios/demo.yaml --of "mean lead time" --page doubts.html`,
    )
    .action(doubts);
}

async function doubts(path: string, options: DoubtsOptions): Promise<void> {
  checkKept(options, DOUBTS_FILE);
  const file = readScenarioFile(path, options.with);
  const { lab, settings: own, doubts: stated, targets: statedTargets } = file.reading;
  const looked = stated ?? usualDoubts(lab);
  if (looked.length === 0) throw badInput('There is nothing in this lab that could be in doubt by a factor.');
  const asked = askedTargets(lab, statedTargets);
  const { targets } = asked;
  const settings = planSettings(own, options);
  const replications = planReplications(own, options);
  const standard = standardMeasures([lab]);
  const measures = (of: Lab) => [...judgedMeasures(of, targets), ...standard];
  const measure = askedMeasure(options.of, measures(lab), targets.length);
  tellWarnings(file);
  const answer = await playPlans(
    {
      command: 'doubts',
      path,
      texts: [file.text],
      labs: [lab],
      settings,
      measures,
    },
    options,
    async (play): Promise<DoubtsAnswer | null> => {
      const question = {
        lab,
        doubts: looked,
        targets,
        measure,
        replications,
        worlds: options.worlds,
        seed: settings.seed,
        level: settings.level,
        weeks: settings.weeks,
      };
      play.expect(replicationsOfDoubts(question), false);
      const found = await doubtsStudy(question, play.plans);
      if (found === null) return null;
      return {
        format: 'buildweek doubts',
        version: DOUBTS_VERSION,
        program: { name: 'buildweek', version: programVersion() },
        scenario: answeredScenario(file),
        run: planRun(play, replications),
        worlds: options.worlds,
        ...found,
        byHand: doubtsByHand(lab, looked, settings.weeks),
        assumptions: assumptionsOf(stated, looked, asked),
        cautions: cautionsOf(lab),
        warnings: [...warningWords(file), ...play.warnings],
      };
    },
  );
  await keepAnswer(answer, options, doubtsText(answer, styleFor(process.stdout)), async () =>
    (await import('@buildweek/report')).renderDoubts(answer),
  );
}

function assumptionsOf(
  stated: readonly Doubt[] | null,
  looked: readonly Doubt[],
  { targets, areUsual, leftOut }: AskedTargets,
): string[] {
  const usual = looked.map(({ name, low, high }) => `${name} ${percent(low)} to ${percent(high)} %`);
  return [
    ...(stated === null
      ? [
          `The scenario has no "doubts", so usual ranges are taken (common practice, no source): ${usual.join(', ')}.`,
        ]
      : []),
    ...(areUsual && targets.length > 0
      ? [`The scenario has no target that playing could judge, so this is taken: ${targets[0]?.wording}.`]
      : []),
    ...(targets.length === 0
      ? [
          'The scenario has no targets and promises nothing, so nothing can be said of whether the plan holds.',
        ]
      : []),
    ...leftOutWords(leftOut),
    'Each factor is drawn by itself from PERT over its range; factors that bear on the same thing multiply.',
    'One period is played in each world, so that the shares are of pairs of a world and a period.',
  ];
}

function percent(factor: number): number {
  return Number((factor * 100).toPrecision(4));
}
