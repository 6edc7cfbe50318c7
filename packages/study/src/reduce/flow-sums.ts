import type { WeekHistory } from '@buildweek/core';
import type { Flow } from '@buildweek/results';
import { RunningMeans } from '@buildweek/statistics';
import { meanBand } from './estimates.ts';

/** Jobs and parts through the lab, week by week. */
export class FlowSums {
  private readonly arrivedJobs: RunningMeans;
  private readonly finishedJobs: RunningMeans;
  private readonly finishedParts: RunningMeans;
  private readonly jobsInLab: RunningMeans;

  constructor(weeks: number) {
    this.arrivedJobs = new RunningMeans(weeks);
    this.finishedJobs = new RunningMeans(weeks);
    this.finishedParts = new RunningMeans(weeks);
    this.jobsInLab = new RunningMeans(weeks);
  }

  add(weeks: WeekHistory): void {
    this.arrivedJobs.add(weeks.arrivedJobs);
    this.finishedJobs.add(weeks.finishedJobs);
    this.finishedParts.add(weeks.finishedParts);
    this.jobsInLab.add(weeks.jobsInLab);
  }

  results(level: number): Flow {
    return {
      arrivedJobs: meanBand(this.arrivedJobs, level),
      finishedJobs: meanBand(this.finishedJobs, level),
      finishedParts: meanBand(this.finishedParts, level),
      jobsInLab: meanBand(this.jobsInLab, level),
    };
  }
}
