import { type History, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { SentOut } from '@buildweek/results';
import { RunningMeans, RunningRatios } from '@buildweek/statistics';
import { meanEstimate, ratioOrRefused } from './estimates.ts';

/** How much a rule sends out: over all part types, then for each that may be sent out. */
export class SentOutSums {
  private readonly rows: readonly RowSums[];

  constructor(lab: Lab) {
    const parts = lab.parts
      .map(({ name }) => name)
      .filter((name) => lab.demand.some(({ part, sentOut }) => part === name && sentOut !== null));
    this.rows = parts.length === 0 ? [] : [null, ...parts].map((part) => new RowSums(part));
  }

  add(history: History): void {
    for (const row of this.rows) row.add(history);
  }

  /** @throws RangeError for fewer than 20 replications */
  results(level: number): SentOut[] {
    return this.rows.map((row) => row.results(level));
  }
}

class RowSums {
  private readonly part: string | null;
  private readonly share = new RunningRatios(1);
  private readonly perWeek = new RunningMeans(2);
  private jobs = 0;
  private sentOut = 0;

  constructor(part: string | null) {
    this.part = part;
  }

  add({ jobClasses, partHours, windowStart, windowEnd }: History): void {
    const isMeant = ({ part }: { readonly part: string }): boolean =>
      this.part === null || part === this.part;
    let jobs = 0;
    let sentOut = 0;
    for (const found of jobClasses.filter(isMeant)) {
      jobs += found.arrived - found.cancelled;
      sentOut += found.sentOut;
    }
    this.jobs += jobs;
    this.sentOut += sentOut;
    this.share.add([sentOut], jobs);
    const weeks = (windowEnd - windowStart) / MILLISECONDS_PER_WEEK;
    let jobsBack = 0;
    let piecesBack = 0;
    for (const { sentOutJobs, sentOutPieces } of partHours.filter(isMeant)) {
      jobsBack += sentOutJobs;
      piecesBack += sentOutPieces;
    }
    this.perWeek.add([jobsBack / weeks, piecesBack / weeks]);
  }

  results(level: number): SentOut {
    return {
      part: this.part,
      jobs: this.jobs,
      sentOut: this.sentOut,
      share: ratioOrRefused(this.share, 0, level, 'No job arrived.', 1),
      jobsPerWeek: meanEstimate(this.perWeek, 0, level),
      partsPerWeek: meanEstimate(this.perWeek, 1, level),
    };
  }
}
