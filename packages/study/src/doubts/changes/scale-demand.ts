import type { ArrivalPattern, DemandStream, Lab } from '@buildweek/model';
import { scaleDistribution } from './scale-distribution.ts';

/**
 * So many times as many jobs a week. Jobs with stated dates, and those that are kept in the lab, stay as they are.
 *
 * @param of name of a demand stream; null: all
 * @param factor above 0
 */
export function scaleDemand(lab: Lab, of: string | null, factor: number): Lab {
  return scaleEachDemand(lab, ({ name }) => (of === null || of === name ? factor : 1));
}

/** A factor for each demand stream. */
export function scaleEachDemand(lab: Lab, factorOf: (stream: DemandStream) => number): Lab {
  return {
    ...lab,
    demand: lab.demand.map((stream) => ({
      ...stream,
      arrivals: scaled(stream.arrivals, factorOf(stream)),
    })),
  };
}

function scaled(arrivals: ArrivalPattern, factor: number): ArrivalPattern {
  switch (arrivals.kind) {
    case 'poisson':
      return { ...arrivals, perWeek: arrivals.perWeek * factor };
    case 'renewal':
      return { ...arrivals, gap: scaleDistribution(arrivals.gap, 1 / factor) };
    case 'dated':
    case 'kept in the lab':
      return arrivals;
  }
}
