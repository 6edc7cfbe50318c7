import { type CensoredSample, mean, standardDeviation } from '@buildweek/statistics';
import type { MachineFacts } from '../facts/machine-groups.ts';
import type { CivilTime, LoggedJob, MachineRun } from '../logged-jobs.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const MINUTE = 60_000;
/** Share of the jobs that must say how many pieces they have, for times by the piece. */
const TOLD_SHARE = 0.8;

/** Of fewer times nothing can be said of what explains them. */
const FEWEST_FOR_SPREAD = 3;

/** Times of work of one kind, or of prints. */
export interface DurationSample {
  /** Part, or group of machines. */
  readonly of: string;
  /** Stage, or `print`. */
  readonly stage: string;
  readonly unit: 'h' | 'min';
  readonly per: 'build' | 'job' | 'part';
  readonly sample: CensoredSample;
}

/** Times of prints by group of machines; what still runs, or was broken off by a breakdown, would have taken longer. */
export function printSamples(
  machines: readonly MachineFacts[],
  runs: readonly MachineRun[],
  until: CivilTime,
): DurationSample[] {
  return machines.map(({ name, machines: own }) => {
    const values: number[] = [];
    const censored: number[] = [];
    for (const { machine, start, end, outcome } of runs) {
      const hours = ((end ?? until) - start) / HOUR;
      if (!own.includes(machine) || hours <= 0 || outcome === 'failed') continue;
      (outcome === 'done' ? values : censored).push(hours);
    }
    return { of: name, stage: 'print', unit: 'h', per: 'build', sample: { values, censored } };
  });
}

/**
 * Times of work by part and stage, of stages that have start and end of the work itself; by the piece where jobs then
 * differ less. Work that goes on at the end of the log would have taken longer. When it began on a day before, it has rested
 * since then, nobody knows for how long, and is left out.
 */
export function workSamples(jobs: readonly LoggedJob[], until: CivilTime): DurationSample[] {
  const groups = new Map<string, StageTimes>();
  for (const { part, quantity, stages, isOpen } of jobs) {
    for (const { name, start, end, isWork } of stages) {
      if (!isWork || start === null) continue;
      if (end === null && !(isOpen && dayOf(start) === dayOf(until - 1))) continue;
      const minutes = ((end ?? until) - start) / MINUTE;
      if (minutes <= 0) continue;
      const key = JSON.stringify([part, name]);
      const group = groups.get(key) ?? new StageTimes(part, name);
      groups.set(key, group);
      group.add(minutes, end === null, quantity);
    }
  }
  return [...groups.values()].map((group) => group.sample());
}

function dayOf(time: CivilTime): number {
  return Math.floor(time / DAY);
}

/** Times of one stage of one part, by the job and by the piece. */
class StageTimes {
  private readonly part: string;
  private readonly stage: string;
  private readonly perJob = { values: [] as number[], censored: [] as number[] };
  private readonly perPiece = { values: [] as number[], censored: [] as number[] };

  constructor(part: string, stage: string) {
    this.part = part;
    this.stage = stage;
  }

  add(minutes: number, goesOn: boolean, quantity: number | null): void {
    (goesOn ? this.perJob.censored : this.perJob.values).push(minutes);
    if (quantity === null) return;
    (goesOn ? this.perPiece.censored : this.perPiece.values).push(minutes / quantity);
  }

  sample(): DurationSample {
    const { perJob, perPiece } = this;
    const isByPiece =
      perPiece.values.length >= FEWEST_FOR_SPREAD &&
      perPiece.values.length >= TOLD_SHARE * perJob.values.length &&
      variationOf(perPiece.values) < variationOf(perJob.values);
    return {
      of: this.part,
      stage: this.stage,
      unit: 'min',
      per: isByPiece ? 'part' : 'job',
      sample: isByPiece ? perPiece : perJob,
    };
  }
}

/** Standard deviation over the mean. */
function variationOf(times: readonly number[]): number {
  return standardDeviation(times) / mean(times);
}
