import { freeCarriers } from './carriers.ts';
import { workLength } from './durations.ts';
import { noteJob } from './events.ts';
import { classKey } from './filling.ts';
import type { Floor, Load, Lot } from './floor.ts';
import { first, remove, stageOf, stageOfLoad } from './floor.ts';
import { lengthOf } from './minutes.ts';
import { handsOf } from './phases.ts';
import { makeReady } from './tasks.ts';

/** Loads go from stage to stage here. */

/** Every lot of the load comes to the stage that it stands at. */
export function enterStage(floor: Floor, load: Load): void {
  const stage = stageOfLoad(load);
  load.readyAt = floor.now;
  load.readyOrder = floor.order++;
  switch (stage.kind) {
    case 'build':
    case 'station':
      load.key = classKey(load);
      floor.waiting.push(load);
      break;
    case 'wait':
      makeReady(
        floor,
        { phase: 'wait', length: lengthOf(stage.duration), hands: null },
        [load],
        null,
        'bench',
      );
      break;
    case 'work': {
      const length = workLength(stage, load);
      makeReady(floor, { phase: 'work', length, hands: handsOf(stage.work) }, [load], null, 'bench');
      break;
    }
  }
}

/** A load is through with its stage: it goes on as it is, dissolves, or waits for the rest of its jobs. */
export function leaveStage(floor: Floor, load: Load): void {
  for (const lot of load.lots) freeCarriers(floor, lot);
  const anyLot = first(load.lots);
  const following = anyLot.job.part.stages[anyLot.stageIndex + 1];
  if (following?.level === 'build' && following.kind !== 'build') {
    for (const lot of load.lots) lot.stageIndex++;
    enterStage(floor, load);
    return;
  }
  for (const lot of load.lots) {
    if (stageOf(lot).move === 'per job') {
      lot.waitsForRest = true;
      joinRest(floor, lot);
    } else {
      goOn(floor, lot);
    }
  }
}

/** When no other lot of the job is at this stage or before it, those that wait here go on as one. */
function joinRest(floor: Floor, lot: Lot): void {
  const { job } = lot;
  const behind = job.lots.some(
    (other) =>
      other.stageIndex < lot.stageIndex || (other.stageIndex === lot.stageIndex && !other.waitsForRest),
  );
  if (behind) return;
  const here = job.lots.filter((other) => other.stageIndex === lot.stageIndex);
  const joined = first(here);
  for (const other of here.slice(1)) {
    joined.pieces += other.pieces;
    remove(job.lots, other);
    for (const carrier of floor.carriers) {
      carrier.holders = carrier.holders.map((holder) => (holder === other ? joined : holder));
    }
  }
  joined.waitsForRest = false;
  goOn(floor, joined);
}

function goOn(floor: Floor, lot: Lot): void {
  const { job } = lot;
  if (lot.stageIndex + 1 < job.part.stages.length) {
    lot.stageIndex++;
    enterStage(floor, { lots: [lot], readyAt: floor.now, readyOrder: 0, key: '' });
    return;
  }
  remove(job.lots, lot);
  if (job.lots.length === 0) {
    job.finishedAt = floor.now;
    noteJob(floor, 'job ends', job);
  }
}
