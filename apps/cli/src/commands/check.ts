import { formatProblem } from '@buildweek/scenario';
import {
  committedCost,
  handCalculation,
  handLeadTimes,
  loadWarnings,
  purchases,
  targetMeaning,
} from '@buildweek/study';
import { Command } from 'commander';
import { readScenarioFile } from '../files/scenario-file.ts';
import { assumptionsTable } from '../tables/assumptions-table.ts';
import { handLeadTimeTable } from '../tables/hand-lead-time-table.ts';
import { handTable } from '../tables/hand-table.ts';
import { committedTable } from '../tables/money-tables.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';

export function checkCommand(): Command {
  const command = new Command('check')
    .summary('say what is wrong with a scenario, or how it is understood')
    .description(
      'Reads a scenario file. Says everything that is wrong with it, with line and column; or prints the lab as it is understood, defaults included, and by hand calculation the load of every machine, station and people group and a rough lead time of every part.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input');
  return withChangesOption(command)
    .addHelpText('after', '\nExample:\n  buildweek check scenarios/demo.yaml')
    .action(check);
}

function check(path: string, options: ChangesOptions): void {
  const { reading } = readScenarioFile(path, options.with);
  const { lab, settings, targets, economics, assumptions, warnings } = reading;
  const style = styleFor(process.stdout);
  const range = { fromWeek: 0, weeks: settings.weeks };
  const loads = handCalculation(lab, range);
  const leadTimes = handLeadTimes(lab, range).map((one) => ({ ...one, difference: null }));
  const basis =
    'Expected hours over hours there, averaged over the measured weeks. The least that the demand asks for: builds and batches full, no material changes, no waiting. At 100 % and above the queue grows without end.';
  const sections = [
    style.heading(harmless(lab.name)),
    section('The lab as understood', assumptionsTable(assumptions, style), style),
    targets.length === 0
      ? ''
      : section(
          'Targets as understood',
          targets
            .map((target) => paragraph(`${target.wording}: ${targetMeaning(target, settings.weeks)}`, '  - '))
            .join('\n'),
          style,
        ),
    section('Load by hand calculation', `${handTable(loads, style)}\n${paragraph(basis, '  ')}`, style),
    leadTimes.length === 0
      ? ''
      : section('Lead times by hand calculation', handLeadTimeTable(leadTimes, null, style), style),
    economics === null
      ? ''
      : section(
          'Money known beforehand',
          committedTable(committedCost(lab, economics), purchases(lab, economics), economics.currency, style),
          style,
        ),
    warnings.map(formatProblem).join('\n\n'),
    listSection('Warnings', loadWarnings(loads), style),
    `No errors. Play it with: buildweek run ${path}`,
  ];
  process.stdout.write(`${sections.filter((text) => text !== '').join('\n\n')}\n`);
}
