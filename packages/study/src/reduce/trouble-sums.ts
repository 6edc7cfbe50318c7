import {
  type History,
  MILLISECONDS_PER_HOUR,
  MILLISECONDS_PER_WEEK,
  type UnitHistory,
} from '@buildweek/core';
import type { EquipmentTrouble, PartTrouble, Trouble } from '@buildweek/results';
import { MACHINE_STATES, STATION_STATES } from '@buildweek/results';
import { RunningMeans } from '@buildweek/statistics';
import { meanEstimate } from './estimates.ts';

/** Breakdowns, failed builds, hours down, hours of maintenance: the figures of a group, in this order. */
const EQUIPMENT_FIGURES = 4;
/** Repeated parts, cancelled jobs; the waits that were too long follow, stage by stage. */
const PART_FIGURES = 2;

/** What went wrong, week by week, over all replications. */
export class TroubleSums {
  private readonly groups: readonly EquipmentSums[];
  private readonly parts: readonly PartSums[];

  constructor(first: History) {
    this.groups = [...groupsOf(first.machines, 'machine'), ...groupsOf(first.stations, 'station')];
    this.parts = first.partHours.map(({ part, steps, waitsTooLong }) => ({
      part,
      stages: Array.from(
        waitsTooLong,
        (_, index) => steps.find((step) => step.stageIndex === index)?.stage ?? '',
      ),
      means: new RunningMeans(PART_FIGURES + waitsTooLong.length),
    }));
  }

  add(history: History): void {
    const weeks = (history.windowEnd - history.windowStart) / MILLISECONDS_PER_WEEK;
    for (const { group, kind, means } of this.groups) {
      const units = (kind === 'machine' ? history.machines : history.stations).filter(
        (unit) => unit.group === group,
      );
      const perWeek = (figure: (unit: UnitHistory) => number): number =>
        units.reduce((sum, unit) => sum + figure(unit), 0) / weeks;
      const states: readonly string[] = kind === 'machine' ? MACHINE_STATES : STATION_STATES;
      const hours = (...names: string[]): number =>
        perWeek((unit) =>
          names.reduce((sum, name) => sum + (unit.timeInState[states.indexOf(name)] ?? 0), 0),
        ) / MILLISECONDS_PER_HOUR;
      means.add([
        perWeek((unit) => unit.breakdowns),
        perWeek((unit) => unit.failures),
        hours('down'),
        hours('maintenance', 'test print'),
      ]);
    }
    for (const { part, means } of this.parts) {
      const found = history.partHours.find((hours) => hours.part === part);
      const cancelled = history.jobClasses.reduce(
        (sum, one) => (one.part === part ? sum + one.cancelled : sum),
        0,
      );
      means.add(
        [found?.repeatedPieces ?? 0, cancelled, ...(found?.waitsTooLong ?? [])].map((count) => count / weeks),
      );
    }
  }

  /** @throws RangeError for fewer than 20 replications */
  results(level: number): Trouble {
    return {
      equipment: this.groups.flatMap((sums) => equipmentResults(sums, level)),
      parts: this.parts.flatMap((sums) => partResults(sums, level)),
    };
  }
}

interface EquipmentSums {
  readonly group: string;
  readonly kind: EquipmentTrouble['kind'];
  readonly count: number;
  readonly means: RunningMeans;
}

interface PartSums {
  readonly part: string;
  readonly stages: readonly string[];
  readonly means: RunningMeans;
}

function groupsOf(units: readonly UnitHistory[], kind: EquipmentTrouble['kind']): EquipmentSums[] {
  return [...new Set(units.map((unit) => unit.group))].map((group) => ({
    group,
    kind,
    count: units.filter((unit) => unit.group === group).length,
    means: new RunningMeans(EQUIPMENT_FIGURES),
  }));
}

function equipmentResults({ group, kind, count, means }: EquipmentSums, level: number): EquipmentTrouble[] {
  if (!hasAny(means)) return [];
  return [
    {
      group,
      kind,
      count,
      breakdownsPerWeek: meanEstimate(means, 0, level),
      failedBuildsPerWeek: meanEstimate(means, 1, level),
      hoursDownPerWeek: meanEstimate(means, 2, level),
      hoursOfMaintenancePerWeek: meanEstimate(means, 3, level),
    },
  ];
}

function partResults({ part, stages, means }: PartSums, level: number): PartTrouble[] {
  if (!hasAny(means)) return [];
  return [
    {
      part,
      repeatedPartsPerWeek: meanEstimate(means, 0, level),
      cancelledJobsPerWeek: meanEstimate(means, 1, level),
      waitedTooLong: stages.flatMap((stage, index) =>
        means.mean(PART_FIGURES + index) === 0
          ? []
          : [{ stage, jobsPerWeek: meanEstimate(means, PART_FIGURES + index, level) }],
      ),
    },
  ];
}

function hasAny(means: RunningMeans): boolean {
  for (let index = 0; index < means.size; index++) if (means.mean(index) > 0) return true;
  return false;
}
