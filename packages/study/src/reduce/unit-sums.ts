import { MILLISECONDS_PER_WEEK, type UnitHistory } from '@buildweek/core';
import type { Estimate, EstimateOrRefused } from '@buildweek/results';
import { RunningMeans, RunningRatios } from '@buildweek/statistics';
import { meanEstimate, ratioOrRefused } from './estimates.ts';

/** What one machine or one station did. */
export interface UnitUse<State extends string> {
  readonly group: string;
  readonly name: string;
  readonly states: { state: State; share: Estimate }[];
  readonly runsPerWeek: Estimate;
  readonly partsPerWeek: Estimate;
  readonly meanFill: EstimateOrRefused;
}

/** Sums over one machine or one station. */
export class UnitSums<State extends string> {
  private readonly group: string;
  private readonly name: string;
  private readonly states: readonly State[];
  private readonly shares: RunningMeans;
  private readonly perWeek = new RunningMeans(2);
  private readonly fill = new RunningRatios(1);

  constructor(first: UnitHistory, states: readonly State[]) {
    this.group = first.group;
    this.name = first.name;
    this.states = states;
    this.shares = new RunningMeans(states.length);
  }

  /** @param windowLength milliseconds that were measured */
  add(unit: UnitHistory, windowLength: number): void {
    const weeks = windowLength / MILLISECONDS_PER_WEEK;
    this.shares.add(unit.timeInState.map((time) => time / windowLength));
    this.perWeek.add([unit.runs / weeks, unit.pieces / weeks]);
    this.fill.add([unit.fillSum], unit.runs);
  }

  results(level: number): UnitUse<State> {
    return {
      group: this.group,
      name: this.name,
      states: this.states.map((state, index) => ({
        state,
        share: meanEstimate(this.shares, index, level, 1),
      })),
      runsPerWeek: meanEstimate(this.perWeek, 0, level),
      partsPerWeek: meanEstimate(this.perWeek, 1, level),
      meanFill: ratioOrRefused(this.fill, 0, level, 'It never ran.', 1),
    };
  }
}
