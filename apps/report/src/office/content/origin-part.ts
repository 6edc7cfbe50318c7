import {
  formatLevel,
  formatPlain,
  formatShare,
  HOURS,
  PERCENT,
  simulatedUse,
  unnamed,
} from '@buildweek/charts';
import { type Assumption, formatNumber, type Results, type Run } from '@buildweek/results';
import type { Cell, Grid } from './block.ts';
import { Cells, numbers } from './cells.ts';

/** Hours asked for over hours available, beside the simulation. */
export function handGrid(results: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Hand calculation beside the simulation',
    [
      { title: 'Resource' },
      numbers('Number'),
      numbers('Asked for, h a week'),
      numbers('Available, h a week'),
      numbers('Load by hand'),
      numbers('Simulated at work, %'),
      numbers('Simulated held in all, %'),
    ],
    results.handCalculation.map((hand): Cell[] => {
      const use = simulatedUse(results, hand);
      return [
        hand.name,
        String(hand.count),
        formatPlain(hand.demandHoursPerWeek),
        formatPlain(hand.availableHoursPerWeek),
        formatShare(hand.load),
        use === null ? '' : cells.estimate(use.working, PERCENT),
        use === null || use.held === null ? '' : cells.estimate(use.held, PERCENT),
      ];
    }),
  );
}

/** Lead times from formulas of waiting, beside the simulated mean. */
export function handLeadTimeGrid({ handLeadTimes, jobs }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Lead time by hand calculation beside the simulated mean, hours of an average job',
    [
      { title: 'Part' },
      numbers('By hand'),
      numbers('Simulated'),
      numbers('Stages'),
      numbers('Trouble'),
      numbers('Requester'),
      numbers('Batch'),
      numbers('Machines, stations'),
      numbers('People'),
    ],
    handLeadTimes.map(({ part, estimate }): Cell[] => {
      const mean = jobs.find((one) => one.part === part && one.priority === 'all')?.meanLeadTime;
      const parts =
        estimate.kind === 'refused'
          ? ['', '', '', '', '', '']
          : [
              estimate.stageHours,
              estimate.troubleHours,
              estimate.requesterHours,
              estimate.batchHours,
              estimate.equipmentHours,
              estimate.peopleHours,
            ].map(formatPlain);
      return [
        part ?? 'all jobs',
        estimate.kind === 'refused' ? cells.estimate(estimate, HOURS) : formatPlain(estimate.leadTimeHours),
        cells.estimate(mean, unnamed(HOURS)),
        ...parts,
      ];
    }),
  );
}

function sourceWords({ source, line }: Assumption): string {
  return line === null ? source : `${source}, line ${line}`;
}

/** Whether somebody stated it, or a mesh was measured; else it is a default. */
export function isStated({ source }: Assumption): boolean {
  return source === 'stated in the scenario' || source === 'measured from a mesh';
}

/** Assumptions with where each came from. */
export function assumptionsGrid(caption: string, assumptions: readonly Assumption[]): Grid[] {
  return new Cells().grid(
    caption,
    [{ title: 'What' }, { title: 'Value' }, { title: 'Where from' }],
    assumptions.map((one) => [one.what, one.value, sourceWords(one)]),
  );
}

function precisionWords({ precision }: Run): string {
  if (precision === null) return 'No precision was asked for.';
  const percent = (share: number): string => `${formatNumber(share * 100, 1)}\u00a0%`;
  const reached = precision.reached === null ? 'not known' : `± ${percent(precision.reached)}`;
  return `Asked for: ${precision.measure} to ± ${percent(precision.asked)}; reached: ${reached}.`;
}

/** How the numbers came about, so that anybody can get them again. */
export function originFacts({ run, program, scenario }: Results): (readonly [string, string])[] {
  return [
    ['Program', `${program.name} ${program.version}`],
    ['Seed', run.seed],
    ['Replications', `${run.replications} of at most ${run.replicationLimit}; ended because: ${run.stopped}`],
    ['Precision', precisionWords(run)],
    ['Measured weeks', String(run.weeks)],
    ['Ignored weeks', `${run.ignoredWeeks.weeks}, ${run.ignoredWeeks.method}. ${run.ignoredWeeks.note}`],
    [
      'Weeks to finish in',
      `${run.capWeeks} after the measured ones; arrivals go on; a job that is not finished by then counts as later than everything`,
    ],
    ['Confidence level', formatLevel(run.level)],
    ['Hash of the scenario', scenario.hash],
  ];
}

/** Differences of less than this are rounding of the computer's arithmetic, hours. */
const ROUNDING = 0.0005;

/** Laws that every replication must obey. */
export function lawsGrid({ checks }: Results): Grid[] {
  return new Cells().grid(
    'Laws that every replication must obey, and did or did not',
    [{ title: 'Law' }, numbers('Replications'), numbers('Largest difference, h'), { title: 'Verdict' }],
    checks.map((check) => [
      check.law,
      String(check.replications),
      Math.abs(check.largestDifferenceHours) < ROUNDING
        ? 'none'
        : formatNumber(check.largestDifferenceHours, 3),
      check.holds ? 'holds' : 'BROKEN',
    ]),
  );
}
