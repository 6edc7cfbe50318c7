import type { Load } from './load.ts';
import { isBefore, type Rank } from './rank.ts';
import type { Simulation } from './simulation.ts';
import type { Task } from './task.ts';
import type { UnitGroup } from './unit-group.ts';

/**
 * Starts everything that can start at this instant: looks at all waiting work at once, over all queues and
 * all idle machines and stations, starts the first-ranked that has its people, and looks again until nothing
 * more can start. A queue in which nothing changed since it was last looked at in vain is passed over.
 */
export class Dispatch {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  run(): void {
    const { staff, tasks, units } = this.simulation;
    for (;;) {
      let best: Rank | null = null;
      let bestTask: Task | null = null;
      let bestGroup: UnitGroup | null = null;
      for (const queue of staff.queues) {
        if (!queue.isStale) continue;
        const task = tasks.firstStartable(queue.compiled.index);
        if (task === null) queue.isStale = false;
        else if (best === null || isBefore(task, best)) {
          best = task;
          bestTask = task;
        }
      }
      for (const group of units.groups) {
        if (!group.isStale) continue;
        const seed: Load | null = group.idle === 0 || group.waiting === 0 ? null : units.pick(group);
        if (seed === null) group.isStale = false;
        else if (best === null || isBefore(seed, best)) {
          best = seed;
          bestTask = null;
          bestGroup = group;
        }
      }
      if (bestGroup !== null) units.launchPicked(bestGroup);
      else if (bestTask !== null) tasks.startWaiting(bestTask);
      else return;
    }
  }
}
