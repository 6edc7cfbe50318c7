import type { LawHistory } from '@buildweek/core';
import type { LawCheck } from '@buildweek/results';
import { MILLISECONDS_PER_HOUR } from './units.ts';

/** Both sides agree to the millisecond; hours of split jobs are divided by pieces, so there rounding may show. */
const ALLOWED_MILLISECONDS = { exact: 0, divided: 1 };

/** The laws that hold in every record, and by how much each was missed at worst. */
export class LawSums {
  private replications = 0;
  private jobs = 0;
  private machines = 0;
  private stations = 0;
  private persons = 0;
  private leadTimes = 0;

  add(laws: LawHistory): void {
    this.replications++;
    this.jobs = Math.max(this.jobs, Math.abs(laws.jobArea - laws.jobStays));
    this.machines = Math.max(this.machines, laws.machineImbalance);
    this.stations = Math.max(this.stations, laws.stationImbalance);
    this.persons = Math.max(this.persons, laws.personImbalance);
    this.leadTimes = Math.max(this.leadTimes, laws.leadTimeImbalance);
  }

  results(): LawCheck[] {
    const check = (law: LawCheck['law'], difference: number, allowed: number): LawCheck => ({
      law,
      replications: this.replications,
      largestDifferenceHours: difference / MILLISECONDS_PER_HOUR,
      holds: difference <= allowed,
    });
    const { exact, divided } = ALLOWED_MILLISECONDS;
    return [
      check("Little's law", this.jobs, exact),
      check('balance of machine states', this.machines, exact),
      check('balance of station states', this.stations, exact),
      check('balance of person states', this.persons, exact),
      check('work and waits make the lead time', this.leadTimes, divided),
    ];
  }
}
