import {
  awayJsonSchema,
  calibrationJsonSchema,
  comparisonJsonSchema,
  decisionJsonSchema,
  doubtsJsonSchema,
  growthJsonSchema,
  learnedJsonSchema,
  partJsonSchema,
  planJsonSchema,
  promiseJsonSchema,
  replayJsonSchema,
  resultsJsonSchema,
  staffJsonSchema,
  weekJsonSchema,
} from '@buildweek/results';
import { scenarioJsonSchema } from '@buildweek/scenario';
import { Argument, Command } from 'commander';

const SCHEMAS = {
  scenario: scenarioJsonSchema,
  results: resultsJsonSchema,
  part: partJsonSchema,
  calibration: calibrationJsonSchema,
  comparison: comparisonJsonSchema,
  plan: planJsonSchema,
  decision: decisionJsonSchema,
  doubts: doubtsJsonSchema,
  growth: growthJsonSchema,
  away: awayJsonSchema,
  staff: staffJsonSchema,
  promise: promiseJsonSchema,
  week: weekJsonSchema,
  replay: replayJsonSchema,
  learned: learnedJsonSchema,
};

export function schemaCommand(): Command {
  return new Command('schema')
    .summary('print the JSON Schema of a document')
    .description(
      'Prints a JSON Schema: of scenario files, for editors that complete and check; of results, of the answer for a part, of a calibration, of a comparison of plans, of a search for a plan, of a decision, of doubts, of growth, of an absence, of the answer to whom to have when, of a watched week, of a model held against a log, or of what was learned from one.',
    )
    .addArgument(new Argument('<document>', 'which one').choices(Object.keys(SCHEMAS)))
    .addHelpText('after', '\nExample:\n  buildweek schema scenario > scenario.schema.json')
    .action((document: keyof typeof SCHEMAS) => {
      process.stdout.write(`${JSON.stringify(SCHEMAS[document](), null, 2)}\n`);
    });
}
