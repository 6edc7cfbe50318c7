import { type TypicalClass, typicalMachines } from '@buildweek/scenario';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { typicalTable } from '../tables/typical-table.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { styleFor } from '../terminal/style.ts';

interface TypicalOptions {
  readonly json: boolean;
}

export function typicalMachinesCommand(): Command {
  return new Command('typical-machines')
    .summary('list the generic machine and station classes with their values')
    .description(
      'Lists the generic classes that a scenario can name (class: small MEX), with what is low, typical and high in the trade. What a scenario does not say of a machine, the typical values of its class stand in for.',
    )
    .argument('[class]', 'one class, as "compact PBF"; default all')
    .option('--json', 'print them as JSON', false)
    .addHelpText(
      'after',
      '\nExamples:\n  buildweek typical-machines\n  buildweek typical-machines "compact PBF"',
    )
    .action(list);
}

function list(name: string | undefined, { json }: TypicalOptions): void {
  const classes = chosen(name);
  if (json) {
    process.stdout.write(`${JSON.stringify(classes, null, 1)}\n`);
    return;
  }
  const style = styleFor(process.stdout);
  const note =
    'Where no source is named, the values are common practice: what people of the trade would say, without a source that could be looked up. Replace them by what your own machines show.';
  const sections = [...classes.map((one) => typicalTable(one, style)), paragraph(note, '')];
  process.stdout.write(`${sections.join('\n\n')}\n`);
}

function chosen(name: string | undefined): TypicalClass[] {
  const classes = typicalMachines();
  if (name === undefined) return classes;
  const found = classes.filter((one) => one.name.toLowerCase() === name.toLowerCase());
  if (found.length > 0) return found;
  const names = classes.map((one) => `"${one.name}"`).join(', ');
  throw badInput(`There is no class "${name}". There are: ${names}.`);
}
