import { type CensoredSample, mean, standardDeviation } from '@buildweek/statistics';
import type { MachineFacts } from '../facts/machine-groups.ts';
import { jobsByName, jobsOfRun } from '../facts/machine-groups.ts';
import type { CivilTime, LoggedJob, MachineRun } from '../logged-jobs.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const MINUTE = 60_000;
/** Share of the jobs that must say how many pieces they have, for times by the piece; of runs, for times by the part. */
const TOLD_SHARE = 0.8;

/** Of fewer times nothing can be said of what explains them. */
const FEWEST_FOR_SPREAD = 3;

/** Times of work of one kind, or of prints. */
export interface DurationSample {
  /** Part, or group of machines. */
  readonly of: string;
  readonly isPart: boolean;
  /** Stage, or `print`. */
  readonly stage: string;
  readonly unit: 'h' | 'min';
  readonly per: 'build' | 'job' | 'part';
  readonly sample: CensoredSample;
}

/**
 * Times of prints: by part where nearly all runs of a group of machines hold one part alone, else by group. What still
 * runs, or was broken off by a breakdown, would have taken longer.
 */
export function printSamples(
  machines: readonly MachineFacts[],
  runs: readonly MachineRun[],
  jobs: readonly LoggedJob[],
  until: CivilTime,
): DurationSample[] {
  const byName = jobsByName(jobs);
  return machines.flatMap(({ name, machines: own }) => {
    const group = new PrintTimes(name, false);
    const parts = new Map<string, PrintTimes>();
    let alone = 0;
    let told = 0;
    for (const { machine, start, end, outcome, job } of runs) {
      const hours = ((end ?? until) - start) / HOUR;
      if (!own.includes(machine) || hours <= 0 || outcome === 'failed') continue;
      group.add(hours, outcome === 'done');
      const inRun = new Set(jobsOfRun(job, byName).map(({ part }) => part));
      const [part] = inRun;
      if (part === undefined) continue;
      told++;
      if (inRun.size > 1) continue;
      alone++;
      const times = parts.get(part) ?? new PrintTimes(part, true);
      parts.set(part, times);
      times.add(hours, outcome === 'done');
    }
    const isByPart = told >= TOLD_SHARE * group.runs && alone >= TOLD_SHARE * told && parts.size > 0;
    return isByPart ? [...parts.values()].map((times) => times.sample()) : [group.sample()];
  });
}

/** Times of prints of one part, or of all runs of a group. */
class PrintTimes {
  private readonly of: string;
  private readonly isPart: boolean;
  private readonly values: number[] = [];
  private readonly censored: number[] = [];

  constructor(of: string, isPart: boolean) {
    this.of = of;
    this.isPart = isPart;
  }

  get runs(): number {
    return this.values.length + this.censored.length;
  }

  add(hours: number, isWhole: boolean): void {
    (isWhole ? this.values : this.censored).push(hours);
  }

  sample(): DurationSample {
    const { of, isPart, values, censored } = this;
    return { of, isPart, stage: 'print', unit: 'h', per: 'build', sample: { values, censored } };
  }
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
      isPart: true,
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
