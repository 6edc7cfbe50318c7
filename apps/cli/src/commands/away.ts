import { AWAY_VERSION, type AwayAnswer } from '@buildweek/results';
import {
  type AwayQuestion,
  awayByHand,
  awayStudy,
  cautionsOf,
  spansOfAbsence,
  weekMeasures,
} from '@buildweek/study';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { AWAY_FILE } from '../files/output-file.ts';
import { readScenarioFile } from '../files/scenario-file.ts';
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
import { playPlans } from '../plans/play-plans.ts';
import { programVersion } from '../program-version.ts';
import { awayText } from '../tables/away-text.ts';
import { styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';
import { gathered, wholeNumberOption } from './option-values.ts';

interface AwayOptions extends PlanOptions, ChangesOptions, ReplicationsOptions {
  readonly group: readonly string[];
  readonly from: number;
  readonly for: number;
}

const USUAL_FROM = 3;
const USUAL_LENGTH = 2;
/** Half a year, so that the way back can be seen; a longer period of the scenario holds. */
const USUAL_WEEKS = 26;

export function awayCommand(): Command {
  const command = new Command('away')
    .summary('say what happens while one person is away, and how long recovery takes')
    .description(
      `Plays the lab with one person of each group away for two weeks, one group after the other, beside the lab as it is and on the same random numbers: jobs on time before, during and after, and in how many weeks the jobs in the lab are back to normal. It measures at least ${USUAL_WEEKS} weeks where --weeks does not say otherwise.`,
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input')
    .option(
      '--group <name>',
      'only of this group of people; may be given again (default: each in turn)',
      gathered,
      [] as readonly string[],
    )
    .option('--from <week>', 'away from this measured week on', wholeNumberOption(2), USUAL_FROM)
    .option('--for <weeks>', 'away for so many weeks', wholeNumberOption(1), USUAL_LENGTH);
  return withPlanOptions(withReplicationsOption(withChangesOption(command), 'each'))
    .addHelpText(
      'after',
      `
Examples:
  buildweek away scenarios/demo.yaml
  buildweek away scenarios/demo.yaml --group technicians --for 3 --weeks 26 --page away.html`,
    )
    .action(away);
}

async function away(path: string, options: AwayOptions): Promise<void> {
  checkKept(options, AWAY_FILE);
  const file = readScenarioFile(path, options.with);
  const { lab, settings: own } = file.reading;
  const settings = planSettings({ ...own, weeks: Math.max(own.weeks, USUAL_WEEKS) }, options);
  const replications = planReplications(own, options);
  const names = lab.people.map(({ name }) => name);
  if (names.length === 0) throw badInput('Nobody works in this lab, so nobody can be away.');
  const unknown = options.group.find((name) => !names.includes(name));
  if (unknown !== undefined) {
    throw badInput(`There is no group of people "${unknown}". There are: ${names.join(', ')}.`);
  }
  const lastWeek = options.from + options.for;
  if (lastWeek > settings.weeks) {
    throw badInput(
      `An absence from week ${options.from} for ${options.for} ends after the ${settings.weeks} measured weeks: recovery could not be seen. Give --weeks ${lastWeek + 8}`,
    );
  }
  const question: AwayQuestion = {
    lab,
    groups: options.group.length > 0 ? options.group : names,
    fromWeek: options.from,
    awayWeeks: options.for,
    weeks: settings.weeks,
    replications,
    level: settings.level,
  };
  const measures = weekMeasures(settings.weeks, spansOfAbsence(question));
  tellWarnings(file);
  const answer = await playPlans(
    {
      command: 'away',
      path,
      texts: [file.text, `${options.from} ${options.for}`],
      labs: [lab],
      settings,
      measures: () => measures,
    },
    options,
    async (play): Promise<AwayAnswer | null> => {
      play.expect(replications * (1 + question.groups.length), false);
      const found = await awayStudy(question, play.plans);
      if (found === null) return null;
      return {
        format: 'buildweek away',
        version: AWAY_VERSION,
        program: { name: 'buildweek', version: programVersion() },
        scenario: answeredScenario(file),
        run: planRun(play, replications),
        startDate: lab.startDate,
        fromWeek: options.from,
        awayWeeks: options.for,
        ...found,
        byHand: awayByHand(lab, question.groups, options.for, settings.weeks),
        cautions: cautionsOf(lab),
        warnings: [...warningWords(file), ...play.warnings],
      };
    },
  );
  await keepAnswer(answer, options, awayText(answer, styleFor(process.stdout)), async () =>
    (await import('@buildweek/report')).renderAway(answer),
  );
}
