import type { Results } from '@buildweek/results';
import { buildFill } from './build-fill.ts';
import type { Chart, ChartSize } from './chart.ts';
import { finishedPerWeek } from './finished-per-week.ts';
import { hoursByPart } from './hours-by-part.ts';
import { hoursByStep } from './hours-by-step.ts';
import { jobsInLab } from './jobs-in-lab.ts';
import { leadTimes } from './lead-times.ts';
import { loadByHand } from './load-by-hand.ts';
import { machineStates } from './machine-states.ts';
import { costSplit } from './money/cost-split.ts';
import { peopleByHour } from './people-by-hour.ts';
import { peopleHours } from './people-hours.ts';
import { printShare } from './print-share.ts';
import { queuesByHour } from './queues-by-hour.ts';
import { queuesByWeek } from './queues-by-week.ts';
import { stationStates } from './station-states.ts';

/**
 * All charts of a run, in the order in which they answer questions: how long, where the hours go, who and what
 * is short, how it develops, and what a hand calculation says. A chart for which the lab has nothing to show
 * (no stations, no people) is left out.
 *
 * @param results the document that a run leaves behind
 * @param size for what width they are laid out
 */
export function chartsOf(results: Results, size: ChartSize = 'wide'): Chart[] {
  const has = (list: readonly unknown[], chart: (results: Results, size: ChartSize) => Chart): Chart[] =>
    list.length === 0 ? [] : [chart(results, size)];
  const queues = results.queues.filter((queue) => queue.kind !== 'all');
  const hours = results.hours.filter((part) => part.steps.length > 0);
  return [
    ...has(results.jobs, leadTimes),
    ...has(hours, printShare),
    ...has(hours, hoursByPart),
    ...has(hours, hoursByStep),
    ...has(results.people, peopleHours),
    ...has(results.people, peopleByHour),
    ...has(results.machines, machineStates),
    ...has(results.builds, buildFill),
    ...has(results.stations, stationStates),
    ...has(queues, queuesByHour),
    ...has(queues, queuesByWeek),
    ...costSplit(results, size),
    finishedPerWeek(results, size),
    jobsInLab(results, size),
    ...has(results.handCalculation, loadByHand),
  ];
}
