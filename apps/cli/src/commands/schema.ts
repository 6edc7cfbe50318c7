import { resultsJsonSchema } from '@buildweek/results';
import { scenarioJsonSchema } from '@buildweek/scenario';
import { Argument, Command } from 'commander';

export function schemaCommand(): Command {
  return new Command('schema')
    .summary('print the JSON Schema of scenarios or results')
    .description(
      'Prints a JSON Schema: of scenario files, for editors that complete and check; or of results.',
    )
    .addArgument(new Argument('<document>', 'which one').choices(['scenario', 'results']))
    .addHelpText('after', '\nExample:\n  buildweek schema scenario > scenario.schema.json')
    .action((document: string) => {
      const schema = document === 'scenario' ? scenarioJsonSchema() : resultsJsonSchema();
      process.stdout.write(`${JSON.stringify(schema, null, 2)}\n`);
    });
}
