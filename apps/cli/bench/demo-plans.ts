import type { Lab, StudySettings } from '@buildweek/model';
import {
  type CandidatePlan,
  candidatePlans,
  decideIgnoredWeeks,
  ObservedPlans,
  observedTargets,
  type Plan,
  type PlanQuestion,
  type ReplicationExecutor,
  standardMeasures,
  targetMeasures,
} from '@buildweek/study';
import { readChangedScenario, readScenarioFile, type ScenarioFile } from '../src/files/scenario-file.ts';
import { planVariants } from '../src/plans/plan-variants.ts';

/** From this workspace, where the bench is run. */
const DEMO = '../../scenarios/demo.yaml';

/** The demo with its own targets and what it says may vary. */
export function demo(): ScenarioFile {
  return readScenarioFile(DEMO);
}

/** The demo with a change in its own words, or of its lab; as it is without one. */
export function changedDemo(name: string, change: string | ((lab: Lab) => Lab) | null): Plan {
  const { lab } = (typeof change === 'string' ? readChangedScenario(demo(), DEMO, change) : demo()).reading;
  return { name, lab: typeof change === 'function' ? change(lab) : lab };
}

/** Every plan that the demo has, in order of preference. */
function plansOf(file: ScenarioFile): CandidatePlan[] {
  return candidatePlans(planVariants(file, DEMO), countsOf(file));
}

/** The question of the command. */
export function questionOf(file: ScenarioFile): PlanQuestion {
  const { lab, targets, settings, economics, variations } = file.reading;
  return {
    plans: plansOf(file),
    targets,
    counts: countsOf(file),
    wordings: variations.filter((one) => one.kind === 'wording'),
    currency: economics?.currency ?? null,
    firstTarget: standardMeasures([lab]).length,
    level: settings.level,
  };
}

function countsOf({ reading }: ScenarioFile) {
  return reading.variations.filter((one) => one.kind === 'count');
}

/** Observations of plans of the demo: what every plan is looked at by, then its targets. */
export async function observedDemo(
  { reading }: ScenarioFile,
  executor: ReplicationExecutor,
): Promise<ObservedPlans> {
  const { lab, targets, settings } = reading;
  const own = observedTargets(targets);
  return new ObservedPlans({
    measures: (one) => [...standardMeasures([one]), ...targetMeasures(one, own)],
    template: {
      seed: settings.seed,
      ignoredWeeks: await ignoredWeeksOf(lab, settings, executor),
      weeks: settings.weeks,
      capWeeks: settings.capWeeks,
      trace: false,
      queueWaits: false,
    },
    executor,
  });
}

async function ignoredWeeksOf(
  lab: Lab,
  settings: StudySettings,
  executor: ReplicationExecutor,
): Promise<number> {
  const decided = await decideIgnoredWeeks(lab, settings, executor, () => {}, null);
  return decided?.ignoredWeeks.weeks ?? 0;
}
