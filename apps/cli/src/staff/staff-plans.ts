import { createHash } from 'node:crypto';
import type { StaffAnswer } from '@buildweek/results';
import { changeScenario, formatProblem, type StaffOption, usualStaffOptions } from '@buildweek/scenario';
import { committedCostPerYear, type StaffPlanAsked } from '@buildweek/study';
import { badInput } from '../failure.ts';
import { readingOf, type ScenarioFile } from '../files/scenario-file.ts';

/** Ways of staffing a lab that are to be played, the lab as it is first. */
export interface StaffPlans {
  readonly plans: readonly StaffPlanAsked[];
  /** Made by the program, and not playable. */
  readonly leftOut: StaffAnswer['leftOut'];
}

/**
 * The options that a scenario states; where it states none, those that the program makes of its people.
 * @throws Failure for bad input when what a stated option makes is no scenario
 */
export function staffPlans(file: ScenarioFile, path: string): StaffPlans {
  const { scenario } = file.reading;
  if (scenario.people.length === 0) {
    throw badInput(
      `Nobody works in the lab of ${nameOf(path)}: there is nothing to say of whom to have when. Write people, as: people: { technicians: { count: 2, skills: [run machines] } }`,
    );
  }
  const isStated = scenario.staff.options.length > 0;
  const options = isStated ? scenario.staff.options : usualStaffOptions(scenario, file.text);
  const plans: StaffPlanAsked[] = [
    planOf('today', 'today', { meaning: 'the scenario as it is', changes: [] }, file),
  ];
  const leftOut: StaffAnswer['leftOut'] = [];
  for (const option of options) {
    const { name } = option;
    const changes = option.changes.map(({ wording }) => wording);
    const text = changeScenario(file.text, option.changes);
    const reading = readingOf(text, path, ` with the option “${name}”`);
    if (reading.kind === 'scenario') {
      const origin = isStated ? 'stated in the scenario' : 'made by the program';
      plans.push(planOf(name, origin, { meaning: option.meaning, changes }, { text, reading }));
      continue;
    }
    const errors = reading.problems.filter(({ severity }) => severity === 'error');
    if (isStated) {
      throw badInput(
        [
          `The option “${name}” (${changes.join('; ')}) makes no lab that can work:`,
          ...errors.map(formatProblem),
          `Lines are those of the scenario with the option in it. Nothing was done.`,
        ].join('\n\n'),
      );
    }
    leftOut.push({ name, changes, reason: errors[0]?.message ?? 'It cannot be read.' });
  }
  if (plans.length < 2) {
    throw badInput(
      `No other way of staffing the lab of ${nameOf(path)} could be made. State some: staff: { options: { three of us: { technicians / count: 3 } } }`,
    );
  }
  return { plans, leftOut };
}

function planOf(
  name: string,
  origin: StaffPlanAsked['origin'],
  { meaning, changes }: Pick<StaffOption, 'meaning'> & { readonly changes: readonly string[] },
  { text, reading: { lab, economics } }: ScenarioFile,
): StaffPlanAsked {
  return {
    name,
    origin,
    meaning,
    changes,
    lab,
    scenario: { text, hash: createHash('sha256').update(text).digest('hex') },
    costPerYear: economics === null ? null : committedCostPerYear(lab, economics),
  };
}

function nameOf(path: string): string {
  return path === '-' ? 'standard input' : path;
}
