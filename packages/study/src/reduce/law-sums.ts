import { type CheckedLaw, checkLaws, type History, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { LawCheck } from '@buildweek/results';

/** The laws that hold in every record, and by how much each was missed at worst. */
export class LawSums {
  private replications = 0;
  private readonly worst = new Map<LawCheck['law'], CheckedLaw>();

  add(history: History): void {
    this.replications++;
    for (const checked of checkLaws(history)) {
      const { law, difference, holds } = this.worst.get(checked.law) ?? checked;
      this.worst.set(law, {
        law,
        difference: Math.max(difference, checked.difference),
        holds: holds && checked.holds,
      });
    }
  }

  results(): LawCheck[] {
    return [...this.worst.values()].map(({ law, difference, holds }) => ({
      law,
      replications: this.replications,
      largestDifferenceHours: difference / MILLISECONDS_PER_HOUR,
      holds,
    }));
  }
}
