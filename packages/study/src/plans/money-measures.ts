import type { Economics, Lab } from '@buildweek/model';
import { PIECE_COST_MEASURE } from '@buildweek/results';
import { committedCostPerYear } from '../money/committed-cost.ts';
import { periodCosts } from '../money/period-costs.ts';
import { WEEKS_PER_YEAR } from '../money/roster-hours.ts';
import type { ReplicationMeasure } from './replication-measure.ts';

/**
 * What a plan costs: known beforehand, in a year as it was played, and for each finished piece.
 *
 * @param lab as it is played
 * @param economics null: the scenario speaks of no money, and there are no such measures
 */
export function moneyMeasures(lab: Lab, economics: Economics | null): ReplicationMeasure[] {
  if (economics === null) return [];
  const committed = committedCostPerYear(lab, economics);
  return [
    { name: 'committed cost', unit: 'money per year', better: 'lower', of: () => [committed, 1] },
    {
      name: 'cost of the lab',
      unit: 'money per year',
      better: 'lower',
      of: (history) => {
        const { total, weeks } = periodCosts(lab, economics, history);
        return [total, weeks / WEEKS_PER_YEAR];
      },
    },
    {
      name: PIECE_COST_MEASURE,
      unit: 'money per piece',
      better: 'lower',
      of: (history) => {
        const { total, finishedParts } = periodCosts(lab, economics, history);
        return [total, finishedParts];
      },
    },
  ];
}
