import { Command } from 'commander';
import { awayCommand } from './commands/away.ts';
import { calibrateCommand } from './commands/calibrate.ts';
import { checkCommand } from './commands/check.ts';
import { compareCommand } from './commands/compare.ts';
import { decideCommand } from './commands/decide.ts';
import { doubtsCommand } from './commands/doubts.ts';
import { followCommand } from './commands/follow.ts';
import { fromLogCommand } from './commands/from-log.ts';
import { growthCommand } from './commands/growth.ts';
import { howManyCommand } from './commands/how-many.ts';
import { openCommand } from './commands/open.ts';
import { partCommand } from './commands/part.ts';
import { promiseCommand } from './commands/promise.ts';
import { replayCommand } from './commands/replay.ts';
import { reportCommand } from './commands/report.ts';
import { runCommand } from './commands/run.ts';
import { schemaCommand } from './commands/schema.ts';
import { selfcheckCommand } from './commands/selfcheck.ts';
import { staffCommand } from './commands/staff.ts';
import { typicalMachinesCommand } from './commands/typical-machines.ts';
import { programVersion } from './program-version.ts';

/** The command with all its subcommands. */
export function createProgram(): Command {
  const program = new Command('buildweek')
    .description(
      'Plans the capacity of an in-house print lab: plays its weeks many times and says how long jobs take, where they wait, and what machines and people are busy with.',
    )
    .version(programVersion(), '--version', 'print the version')
    .helpCommand(false)
    .addHelpText(
      'after',
      `
To get going:
  buildweek check scenarios/small.yaml                    how a lab is understood, and its load by hand
  buildweek run scenarios/small.yaml --json small.json    play it, keep the results
  buildweek report small.json                             make a page of them
  buildweek open scenarios/small.yaml                     or look at it while you write it

To decide, on the demo lab; each takes a minute or two:
  buildweek how-many scenarios/demo.yaml                  how many machines and people, at what cost
  buildweek compare scenarios/demo.yaml --with "resin / count: 4"
                                                          what a change brings
  buildweek growth scenarios/demo.yaml --by "4 % a month" until when the lab is large enough

Copy a scenario, change the number of people, and run it again. "buildweek run --help" says more.`,
    );
  for (const command of [
    checkCommand(),
    runCommand(),
    reportCommand(),
    openCommand(),
    followCommand(),
    fromLogCommand(),
    replayCommand(),
    compareCommand(),
    howManyCommand(),
    decideCommand(),
    staffCommand(),
    partCommand(),
    promiseCommand(),
    doubtsCommand(),
    growthCommand(),
    awayCommand(),
    typicalMachinesCommand(),
    calibrateCommand(),
    selfcheckCommand(),
    schemaCommand(),
  ]) {
    program.addCommand(command.exitOverride());
  }
  return program.exitOverride();
}
