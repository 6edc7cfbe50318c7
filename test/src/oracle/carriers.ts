import type { Floor, Lot } from './floor.ts';
import { remove } from './floor.ts';

/** A carrier is free when the last lot on it has passed the stage that empties it, else its build stage. */
export function freeCarriers(floor: Floor, lot: Lot): void {
  const { stages } = lot.job.part;
  const build = stages.findLastIndex((stage, index) => stage.kind === 'build' && index <= lot.stageIndex);
  const emptying = stages.findIndex((stage, index) => index >= build && stage.emptiesCarrier);
  if (lot.stageIndex !== (emptying < 0 ? build : emptying)) return;
  for (const carrier of [...floor.carriers]) {
    if (!carrier.holders.includes(lot)) continue;
    carrier.holders = carrier.holders.filter((holder) => holder !== lot);
    if (carrier.holders.length === 0) remove(floor.carriers, carrier);
  }
}
