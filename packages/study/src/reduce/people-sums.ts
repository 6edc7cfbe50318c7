import { MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK, type PeopleHistory } from '@buildweek/core';
import { PERSON_STATES, type PeopleUse } from '@buildweek/results';
import { RunningMeans, RunningRatios } from '@buildweek/statistics';
import { meanBand, meanEstimate, ratioOrRefused } from './estimates.ts';

/** What the people of one group did. */
export class PeopleSums {
  private readonly group: string;
  private readonly count: number;
  private readonly stages: readonly string[];
  private readonly shares = new RunningMeans(PERSON_STATES.length);
  private readonly busyOfDuty = new RunningRatios(1);
  private readonly hoursByStage: RunningMeans;
  private readonly busyByHour: RunningMeans;
  private readonly onDutyByHour: RunningMeans;

  constructor(first: PeopleHistory) {
    this.group = first.group;
    this.count = first.count;
    this.stages = first.stages;
    this.hoursByStage = new RunningMeans(first.stages.length);
    this.busyByHour = new RunningMeans(first.busyByHourOfWeek.length);
    this.onDutyByHour = new RunningMeans(first.onDutyByHourOfWeek.length);
  }

  /** @param windowLength milliseconds that were measured */
  add(people: PeopleHistory, windowLength: number): void {
    const times = new Map(PERSON_STATES.map((state) => [state, 0]));
    people.timeInState.forEach((time, entry) => {
      const state = PERSON_STATES[entry % PERSON_STATES.length] ?? 'off';
      times.set(state, (times.get(state) ?? 0) + time);
    });
    const hoursIn = (state: (typeof PERSON_STATES)[number]): number =>
      (times.get(state) ?? 0) / MILLISECONDS_PER_HOUR;
    // A group of nobody spends no time in anything.
    const groupTime = Math.max(1, this.count) * windowLength;
    this.shares.add(PERSON_STATES.map((state) => (times.get(state) ?? 0) / groupTime));
    const busy = hoursIn('work') + hoursIn('other duties');
    this.busyOfDuty.add([busy], busy + hoursIn('idle'));
    const weeks = windowLength / MILLISECONDS_PER_WEEK;
    this.hoursByStage.add(people.timeByStage.map((time) => time / MILLISECONDS_PER_HOUR / weeks));
    this.busyByHour.add(people.busyByHourOfWeek);
    this.onDutyByHour.add(people.onDutyByHourOfWeek);
  }

  results(level: number): PeopleUse {
    return {
      group: this.group,
      count: this.count,
      states: PERSON_STATES.map((state, index) => ({
        state,
        share: meanEstimate(this.shares, index, level, 1),
      })),
      busyShareOfDuty: ratioOrRefused(this.busyOfDuty, 0, level, 'Nobody of this group was on duty.', 1),
      hoursByStage: this.stages.flatMap((stage, index) =>
        this.hoursByStage.mean(index) === 0
          ? []
          : [{ stage, hoursPerWeek: meanEstimate(this.hoursByStage, index, level) }],
      ),
      busyByHourOfWeek: meanBand(this.busyByHour, level),
      onDutyByHourOfWeek: Array.from({ length: this.onDutyByHour.size }, (_, hour) =>
        this.onDutyByHour.mean(hour),
      ),
    };
  }
}
