import { HOURS_PER_WEEK } from '@buildweek/core';
import type { Lab, StationGroup } from '@buildweek/model';
import { type ExpectedBatches, expectedBatches } from '../expected-batches.ts';
import type { ExpectedBuilds } from '../expected-builds.ts';
import { waitToBatch } from '../formulas/batching.ts';
import { type Moments, sumOf, withOutages } from '../formulas/process-time.ts';
import { chooseFullness, fillAt } from './fill-choice.ts';
import { leastFill, loadsAfter } from './least-fill.ts';
import type { JobBuild } from './machine-queue.ts';
import type { StreamFlow } from './stream-flow.ts';
import { momentsOf, outagesOf } from './trouble.ts';
import { type Capacity, type Queue, queueOf } from './visits.ts';

/** Batches of one stage of a stream. */
interface JobBatch {
  readonly flow: StreamFlow;
  readonly batches: ExpectedBatches;
  readonly perWeek: number;
  /** Jobs or builds in a batch; below 1 where one takes several batches. */
  readonly loadsPerBatch: number;
  readonly natural: Moments;
  readonly effective: Moments;
  readonly batchHours: number;
}

/** The queue before a group of stations. */
export interface StationQueue extends Queue {
  readonly group: StationGroup;
  readonly batches: readonly JobBatch[];
}

/** The batches of all streams, counted as full, when builds are as full as they are taken to be. */
export function batchFlows(
  lab: Lab,
  flows: readonly StreamFlow[],
  builds: readonly JobBuild[],
  full: readonly ExpectedBuilds[],
): ExpectedBatches[] {
  const taken = full.map((one) => {
    const chosen = builds.find(({ flow }) => flow.demand === one.demand);
    return chosen === undefined ? one : { ...one, buildsPerWeek: chosen.perWeek };
  });
  return expectedBatches(
    lab,
    flows.map(({ demand }) => demand),
    taken,
  );
}

/** @param leastFullness take batches to be no less full than this; see {@link chooseFullness} */
export function stationQueue(
  group: StationGroup,
  flows: readonly StreamFlow[],
  batches: readonly ExpectedBatches[],
  capacity: Capacity,
  leastFullness: number,
): StationQueue {
  const own = batches
    .filter((one) => one.group === group)
    .flatMap((one) => {
      const flow = flows.find(({ demand }) => demand === one.demand);
      if (flow === undefined) return [];
      const passes = flow.passes[flow.part.stages.indexOf(one.stage)] ?? 1;
      return [{ flow, batches: one, full: one.batchesPerWeek * passes, loads: one.loadsPerWeek * passes }];
    });
  const loadsPerWeek = own.reduce((sum, { loads }) => sum + loads, 0);
  const fullPerWeek = own.reduce((sum, { full }) => sum + full, 0);
  const waited = group.waitedHours === null ? [] : [loadsAfter(group.waitedHours, loadsPerWeek)];
  const least = leastFill({ loadsPerWeek, fullPerWeek }, group.fullShare, waited);
  const outages = outagesOf(group.breakdowns);
  const at = (fullness: number): StationQueue => {
    const fill = fillAt(least, fullness);
    const loadsTogether = fullPerWeek === 0 ? 1 : loadsPerWeek / (fullPerWeek / fill);
    const found = own.map(({ flow, batches: one, full, loads }): JobBatch => {
      const natural = timeOfBatch(one, flow);
      const perWeek = full / fill;
      return {
        flow,
        batches: one,
        perWeek,
        loadsPerBatch: loads / perWeek,
        natural,
        effective: outages === null ? natural : withOutages(natural, outages),
        batchHours: loadsTogether > 1 ? waitToBatch(loadsTogether, loadsPerWeek / HOURS_PER_WEEK) : 0,
      };
    });
    const queue = queueOf(
      found.map(({ flow, perWeek, loadsPerBatch, effective }) => ({
        perWeek,
        time: effective,
        arrivalVariability: flow.arrivalVariability / loadsPerBatch,
      })),
      capacity,
    );
    return { ...queue, group, batches: found };
  };
  if (least === 1) return at(1);
  return at(
    chooseFullness(leastFullness, (fullness) => {
      const { waitHours, batches: found } = at(fullness);
      return found.reduce(
        (sum, { flow, batchHours, effective }) =>
          sum + flow.demand.jobsPerWeek * (batchHours + waitHours + effective.mean),
        0,
      );
    }),
  );
}

function timeOfBatch(batches: ExpectedBatches, flow: StreamFlow): Moments {
  const { stage, runHours, loadsPerWeek, batchesPerWeek, piecesPerLoad } = batches;
  return sumOf([
    momentsOf(stage.load?.duration.distribution),
    { mean: runHours, variance: runVariance() },
    momentsOf(stage.unload?.duration.distribution),
  ]);

  function runVariance(): number {
    const draw = momentsOf(stage.run.distribution);
    if (stage.basis !== 'part') return draw.variance;
    const pieces = Math.min(1, loadsPerWeek / batchesPerWeek) * piecesPerLoad;
    const ofPieces = stage.level === 'job' && loadsPerWeek >= batchesPerWeek ? flow.pieces.variance : 0;
    return pieces * draw.variance + draw.mean ** 2 * ofPieces;
  }
}
