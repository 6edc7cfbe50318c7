import { CALIBRATION_ANSWER_VERSION, type CalibrationAnswer } from '@buildweek/results';
import { calibrate } from '@buildweek/study';
import { Command } from 'commander';
import { buildsFailure, readBuilds } from '../calibrate/builds-file.ts';
import { badInput } from '../failure.ts';
import { CALIBRATION_FILE, checkOutput, writeOutput } from '../files/output-file.ts';
import { readText } from '../files/read-file.ts';
import { readScenarioFile } from '../files/scenario-file.ts';
import { programVersion } from '../program-version.ts';
import { calibrationText } from '../tables/calibration-text.ts';
import { styleFor } from '../terminal/style.ts';

interface CalibrateOptions {
  readonly machine: string;
  readonly json?: string;
  readonly force: boolean;
}

export function calibrateCommand(): Command {
  return new Command('calibrate')
    .summary('fit print times to builds that you have measured')
    .description(
      'Fits the print time model of a machine group to a list of your own builds. Says how good the fit is, how far a build is from its estimate, what the builds could not tell apart, and which lines to write in the scenario.',
    )
    .argument('<scenario>', 'scenario file (YAML) whose parts were built; - reads standard input')
    .argument('<builds>', 'list of builds (CSV); - reads standard input')
    .requiredOption('--machine <name>', 'machine group that they were built on, as the scenario names it')
    .option('--json <file>', 'write the answer as JSON; - for standard output')
    .option('--force', 'overwrite files that this command did not write', false)
    .addHelpText(
      'after',
      `
The list has a header line and one row for each part type of a build:
  build;part;pieces;hours
  17;bracket;12;5 h 20 min
  17;gear;4;
  18;bracket;30;11,5
Commas, semicolons or tabs separate. 5.3, 5,3, 5:20 and 5 h 20 min are all hours: those of
the print alone, without warm-up and cool-down, on one row of a build or the same on all.
Parts are those of the scenario that have a size or a mesh. Lines that begin with # are left
out. Three builds are the least; ten that differ in height and in volume say much more.

Example:
  buildweek calibrate scenarios/demo.yaml scenarios/measured-builds.csv --machine powder`,
    )
    .action(fit);
}

function fit(scenario: string, builds: string, { machine, json, force }: CalibrateOptions): void {
  if (scenario === '-' && builds === '-') throw badInput('Only one of the two files can be standard input.');
  if (json !== undefined && json !== '-') checkOutput(json, CALIBRATION_FILE, force);
  const { lab } = readScenarioFile(scenario).reading;
  const name = builds === '-' ? 'standard input' : builds;
  const file = readBuilds(readText(builds, 'list of builds'), name);
  if (file.problems.length > 0 && file.rows.length === 0) throw badInput(buildsFailure(file.problems, name));
  const outcome = calibrate(file.rows, lab, machine);
  if (outcome.kind === 'refused') throw badInput(outcome.reason);
  const mistakes = outcome.kind === 'mistakes' ? outcome.mistakes.map((one) => file.problemOf(one)) : [];
  if (outcome.kind === 'mistakes' || file.problems.length > 0) {
    throw badInput(buildsFailure([...file.problems, ...mistakes], name));
  }
  const answer: CalibrationAnswer = {
    format: 'buildweek calibration',
    version: CALIBRATION_ANSWER_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    ...outcome.calibration,
    warnings: [...unusedWarning(file.unused), ...outcome.calibration.warnings],
  };
  const text = `${JSON.stringify(answer, null, 1)}\n`;
  if (json === '-') {
    process.stdout.write(text);
    return;
  }
  if (json !== undefined) writeOutput(json, text);
  process.stdout.write(calibrationText(answer, styleFor(process.stdout)));
}

function unusedWarning(titles: readonly string[]): string[] {
  if (titles.length === 0) return [];
  return [
    `Not used: ${titles.length === 1 ? 'column' : 'columns'} ${titles.map((title) => `"${title}"`).join(', ')}.`,
  ];
}
