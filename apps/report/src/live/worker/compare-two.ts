import { COMPARISON_VERSION, type ComparisonAnswer, type IgnoredWeeks } from '@buildweek/results';
import {
  comparePlans,
  handBeside,
  handSentence,
  moneyMeasures,
  ObservedPlans,
  type ReplicationMeasure,
  standardMeasures,
} from '@buildweek/study';
import type { PlayBase } from '../shared/play-base.ts';
import type { PlayedPlan } from './played-plan.ts';

/** What the two are called in sentences and tables. */
export const CHANGED = 'with your change';

/**
 * What a change brings, as the command `compare` finds it: the same measures of the same replications, the same
 * intervals.
 *
 * @param changes as `--with` takes them
 * @param replications of each, which have been played
 */
export async function compareTwo(
  base: PlayBase,
  before: PlayedPlan,
  after: PlayedPlan,
  changes: readonly string[],
  replications: number,
  ignoredWeeks: IgnoredWeeks,
): Promise<ComparisonAnswer> {
  const played = new Map([
    [base.name, before],
    [CHANGED, after],
  ]);
  const labs = [before.plan.lab, after.plan.lab];
  const standard = standardMeasures(labs);
  const currency = before.plan.economics?.currency ?? null;
  const lists = new Map<string, readonly ReplicationMeasure[]>();
  const observed = new ObservedPlans({
    template: before.template,
    measures: (lab, { name }) => {
      const economics = currency === null ? null : (played.get(name)?.plan.economics ?? null);
      const measures = [...standard, ...moneyMeasures(lab, economics)];
      lists.set(name, measures);
      return measures;
    },
    // All that is asked for has been played.
    journal: {
      read: (name, replication) => {
        const history = played.get(name)?.histories[replication];
        if (history === undefined) return null;
        return Float64Array.from((lists.get(name) ?? []).flatMap((measure) => measure.of(history)));
      },
      write: () => {},
    },
    executor: {
      run: () => {
        throw new Error('A replication is missing that should have been played.');
      },
    },
  });
  const plans = [...played].map(([name, { plan }]) => ({ name, lab: plan.lab }));
  const { level } = base.run;
  const compared = await comparePlans(plans, observed, replications, level, currency);
  if (compared === null) throw new Error('Somebody stopped what was not playing.');
  const { seed, weeks, capWeeks } = base.run;
  return {
    format: 'buildweek comparison',
    version: COMPARISON_VERSION,
    program: { name: 'buildweek', version: base.version },
    currency,
    run: { seed, replications, weeks, ignoredWeeks, capWeeks, level },
    differencesLevel: compared.differencesLevel,
    plans: [...played].map(([name, { plan, text }], index) => {
      const measures = compared.measures[index] ?? [];
      const { handHours, handCalculation } = handBeside(plan.lab, weeks);
      return {
        name,
        changes: index === 0 ? [] : [...changes],
        scenario: { name: plan.lab.name, text, hash: '' },
        measures: [...measures],
        handHours,
        handCalculation,
        handSentence: handSentence(measures, handHours),
      };
    }),
    pairs: [...compared.pairs],
    cautions: [],
    warnings: [],
  };
}
