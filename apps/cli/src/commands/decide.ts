import type { DecisionAnswer } from '@buildweek/results';
import { FEWEST_REPLICATIONS, observedTargets } from '@buildweek/study';
import { Command } from 'commander';
import { decisionOf } from '../decide/decision-work.ts';
import { badInput } from '../failure.ts';
import { DECISION_FILE } from '../files/output-file.ts';
import { reportPage } from '../files/report-page.ts';
import { readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import { checkOffice, type OfficeOptions, withOfficeOptions } from '../office/office-options.ts';
import { writeOffice } from '../office/write-office.ts';
import { checkKept, keepAnswer, tellWarnings } from '../plans/plan-answer.ts';
import {
  type PlanOptions,
  planReplications,
  planSettings,
  type ReplicationsOptions,
  withPlanOptions,
  withReplicationsOption,
} from '../plans/plan-options.ts';
import { playPlans } from '../plans/play-plans.ts';
import { planSearchSetup } from '../plans/search-plans.ts';
import { decisionText } from '../tables/decision-text.ts';
import { styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';
import { wholeNumberOption } from './option-values.ts';

interface DecideOptions extends PlanOptions, ChangesOptions, ReplicationsOptions, OfficeOptions {
  readonly atMost: number;
  readonly worlds: number;
}

const USUAL_WORLDS = 200;

export function decideCommand(): Command {
  const command = new Command('decide')
    .summary('make the page that leadership decides by')
    .description(
      'Finds the cheapest plan that meets the targets, sets it against the lab as it is, a cheaper and a faster plan on the same random numbers, plays it in full, asks what is in doubt of it, and puts everything into one page: what is proposed, what it costs and how sure that is first.',
    )
    .argument('<file>', 'scenario file (YAML) with targets and "may vary"; - reads standard input')
    .option(
      '--at-most <number>',
      'replications after which a plan of the search is left undecided',
      wholeNumberOption(FEWEST_REPLICATIONS),
      1000,
    )
    .option(
      '--worlds <number>',
      'draw so many worlds for what is in doubt, at least 20',
      wholeNumberOption(20),
      USUAL_WORLDS,
    );
  return withOfficeOptions(
    withPlanOptions(withReplicationsOption(withChangesOption(command), 'each of the options')),
  )
    .addHelpText(
      'after',
      `
Examples:
  buildweek decide scenarios/demo.yaml --page decision.html
  buildweek decide scenarios/demo.yaml --page decision.html --json decision.json
  buildweek decide scenarios/demo.yaml --pdf decision.pdf --slides decision.pptx
  buildweek report decision.json                     the page again`,
    )
    .action(decide);
}

async function decide(path: string, options: DecideOptions): Promise<void> {
  checkKept(options, DECISION_FILE);
  checkOffice(options);
  const file = readScenarioFile(path, options.with);
  checkQuestion(file, path);
  const settings = planSettings(file.reading.settings, options);
  const replications = planReplications(file.reading.settings, options);
  const setup = planSearchSetup(file, path, settings.level);
  const { atMost: most, worlds } = options;
  tellWarnings(file);
  const answer: DecisionAnswer = await playPlans(
    {
      command: 'decide',
      path,
      texts: [file.text, String(replications), String(worlds), String(most)],
      labs: setup.labs,
      settings,
      measures: setup.measures,
    },
    options,
    (play) => decisionOf({ file, path, setup, settings, replications, most, worlds }, play),
  );
  await keepAnswer(answer, options, decisionText(answer, styleFor(process.stdout)), () => reportPage(answer));
  await writeOffice(answer, options);
}

/** A decision is between plans, by targets. @throws Failure for bad input when the scenario has one without the other */
function checkQuestion({ reading }: ScenarioFile, path: string): void {
  const { targets, variations, lab } = reading;
  const missing: string[] = [];
  if (observedTargets(targets).length === 0) {
    missing.push('what the lab has to reach, as\n  targets:\n    - on time at least 92 %');
  }
  if (variations.length === 0) {
    const name = lab.machines[0]?.name ?? lab.people[0]?.name ?? 'resin';
    missing.push(`what may be chosen, as\n  may vary:\n    ${name}: 1 to 4`);
  }
  if (missing.length === 0) return;
  throw badInput(
    `${path} does not say ${missing.join('\nand ')}\nWithout that there is nothing to decide; the lab as it is: buildweek run ${path} --json RESULTS, then buildweek report RESULTS`,
  );
}
