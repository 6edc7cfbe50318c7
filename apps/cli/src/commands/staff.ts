import { STAFF_VERSION, type StaffAnswer } from '@buildweek/results';
import { cautionsOf, compareStaff, staffMeasures } from '@buildweek/study';
import { Command } from 'commander';
import { STAFF_FILE } from '../files/output-file.ts';
import { readScenarioFile } from '../files/scenario-file.ts';
import { checkKept, keepAnswer, planRun, tellWarnings, warningWords } from '../plans/plan-answer.ts';
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
import { staffPlans } from '../staff/staff-plans.ts';
import { staffText } from '../tables/staff-text.ts';
import { styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';

type StaffOptions = PlanOptions & ChangesOptions & ReplicationsOptions;

const NOTES = [
  'All options are played on the same random numbers: jobs, machines and those whose group keeps its name have the same luck. Who is moved becomes a group of another name, with luck of its own in absence and other duties.',
  'Hours at night, alone, and with nobody there are those of the calendars with stated leave; absence by chance comes on top.',
];

export function staffCommand(): Command {
  const command = new Command('staff')
    .summary('say whom to have when')
    .description(
      'Plays a lab with its people at other hours, with other skills and in other numbers, on the same random numbers, and says what that does to lead times and waiting. The options are those under "staff" in the scenario; where there are none, the program makes some of the people who are there. Hours are held against rules that the scenario can state; whether they are lawful is not for a program to say.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input');
  return withPlanOptions(withReplicationsOption(withChangesOption(command), 'each option'))
    .addHelpText(
      'after',
      `
Options in a scenario:
  staff:
    options:
      late start: { technicians / hours: { mon-fri: 10:00-18:00 } }
      three of us: { technicians / count: 3 }
    rest: 11 h
    hours a week: 48 h
    days in a row: 6

Examples:
  buildweek staff scenarios/demo.yaml
  buildweek staff scenarios/demo.yaml --page staff.html --json staff.json`,
    )
    .action(staff);
}

async function staff(path: string, options: StaffOptions): Promise<void> {
  checkKept(options, STAFF_FILE);
  const file = readScenarioFile(path, options.with);
  const { scenario, lab, economics, settings: own } = file.reading;
  const { plans, leftOut } = staffPlans(file, path);
  const settings = planSettings(own, options);
  const replications = planReplications(own, options);
  const measures = staffMeasures(lab);
  const { rules } = scenario.staff;
  const currency = economics?.currency ?? null;
  tellWarnings(file);
  const answer = await playPlans(
    {
      command: 'staff',
      path,
      texts: plans.flatMap(({ name, scenario: { text } }) => [name, text]),
      labs: [lab, ...plans.map((plan) => plan.lab)],
      settings,
      measures: () => measures.all,
    },
    options,
    async (play): Promise<StaffAnswer | null> => {
      play.expect(replications * plans.length, false);
      const { weeks, level } = settings;
      const compared = await compareStaff({
        plans,
        observed: play.plans,
        measures,
        rules,
        weeks,
        replications,
        level,
        currency,
      });
      if (compared === null) return null;
      return {
        format: 'buildweek staff',
        version: STAFF_VERSION,
        program: { name: 'buildweek', version: programVersion() },
        scenarioName: lab.name,
        currency,
        run: planRun(play, replications),
        rules,
        ...compared,
        leftOut,
        notes: NOTES,
        cautions: [
          ...new Map(plans.flatMap((plan) => cautionsOf(plan.lab)).map((one) => [one.topic, one])).values(),
        ],
        warnings: [...warningWords(file), ...play.warnings],
      };
    },
  );
  await keepAnswer(answer, options, staffText(answer, styleFor(process.stdout)), async () =>
    (await import('@buildweek/report')).renderStaff(answer),
  );
}
