import type { WordingVariation } from '@buildweek/model';
import type { ChangeWording } from '@buildweek/scenario';
import { type PlanChoice, type PlanVariant, variationName, variationPlace } from '@buildweek/study';
import { readChangedScenario, type ScenarioFile } from '../files/scenario-file.ts';

/**
 * The scenario with every combination of what may be worded otherwise, each read as a scenario of its own; numbers
 * that may vary are left as they are.
 * @throws Failure for bad input when one of them is no scenario
 */
export function planVariants(file: ScenarioFile, path: string): PlanVariant[] {
  const wordings = file.reading.variations.filter((one) => one.kind === 'wording');
  return combinations(wordings).map((options) => {
    const changes = options.flatMap(({ variation, option }): ChangeWording[] => {
      if (option === presentOf(file, variation)) return [];
      const wording = `${variationPlace(variation)}: ${option}`;
      return [{ wording, path: variation.path, value: option }];
    });
    const { lab, economics } = (changes.length === 0 ? file : readChangedScenario(file, path, changes))
      .reading;
    return {
      options: options.map(({ variation, option }): PlanChoice => {
        return { what: variationName(variation), value: option };
      }),
      isToday: changes.length === 0,
      lab,
      economics,
    };
  });
}

interface Option {
  readonly variation: WordingVariation;
  readonly option: string;
}

function combinations(wordings: readonly WordingVariation[]): Option[][] {
  return wordings.reduce<Option[][]>(
    (found, variation) =>
      found.flatMap((before) => variation.options.map((option) => [...before, { variation, option }])),
    [[]],
  );
}

/** What the scenario says today, as its list of values has it. */
function presentOf({ reading }: ScenarioFile, { path, options }: WordingVariation): string {
  const what = path.join(' / ');
  const value = reading.assumptions.find((assumption) => assumption.what === what)?.value;
  return value ?? options[0] ?? '';
}
