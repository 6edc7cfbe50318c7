import { type History, MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Economics, Lab, PartType } from '@buildweek/model';
import { COST_KINDS, type CostKind, PERSON_STATES } from '@buildweek/results';
import { committedCost } from './committed-cost.ts';
import { materialPerPiece } from './material-per-piece.ts';
import { paidHours, WEEKS_PER_YEAR } from './roster-hours.ts';

/** What one period of the lab cost, and what came out of it. Money in the currency of the scenario. */
export interface PeriodCosts {
  readonly weeks: number;
  readonly byKind: Readonly<Record<CostKind, number>>;
  readonly total: number;
  /** Of `material`: that of pieces which had to be made again. */
  readonly repeats: number;
  /** Finished in the period, those made outside with them. */
  readonly finishedParts: number;
  readonly finishedJobs: number;
  /** In the order of the lab. */
  readonly parts: readonly PartOutput[];
}

/** What came out of a period of one part type. */
export interface PartOutput {
  readonly part: string;
  readonly madeJobs: number;
  readonly madePieces: number;
  readonly sentOutJobs: number;
  readonly sentOutPieces: number;
  /** What its material cost in the period: of all pieces that were built, good or not. */
  readonly material: number;
}

/**
 * Splits the costs of one replication: equipment, upkeep, people and other costs by the weeks of the period; overtime,
 * material and work sent out by what happened. Material is that of builds that ended or failed in the period; a failed
 * build counts as whole.
 * @param lab as it was played
 * @throws Error when something costs money and nobody has said how much; `scenario` has made sure of it
 */
export function periodCosts(lab: Lab, economics: Economics, history: History): PeriodCosts {
  const weeks = (history.windowEnd - history.windowStart) / MILLISECONDS_PER_WEEK;
  const years = weeks / WEEKS_PER_YEAR;
  const committed = committedCost(lab, economics);
  const parts = lab.parts.map((part) => partCosts(lab, economics, part, history));
  const byKind = {
    equipment: years * total(committed.equipment, ({ capitalPerYear }) => capitalPerYear),
    upkeep: years * total(committed.equipment, ({ upkeepPerYear }) => upkeepPerYear),
    people: peopleCost(lab, economics, history, weeks),
    overtime: overtimeCost(economics, history),
    material: total(parts, ({ output }) => output.material),
    outside: total(parts, ({ outside }) => outside),
    other: years * economics.otherPerYear,
  };
  return {
    weeks,
    byKind,
    total: total(COST_KINDS, (kind) => byKind[kind]),
    repeats: total(parts, ({ repeats }) => repeats),
    finishedParts: total(history.weeks.finishedParts, (pieces) => pieces),
    finishedJobs: total(history.weeks.finishedJobs, (jobs) => jobs),
    parts: parts.map(({ output }) => output),
  };
}

function partCosts(
  lab: Lab,
  economics: Economics,
  part: PartType,
  history: History,
): { output: PartOutput; repeats: number; outside: number } {
  const found = history.partHours.find((candidate) => candidate.part === part.name);
  if (found === undefined) throw new Error(`A history says nothing of "${part.name}".`);
  const { madeJobs, madePieces, sentOutJobs, sentOutPieces } = found;
  // Where nothing is built, material is taken to go into every piece that is made, or made again.
  const isBuilt = part.stages.some((stage) => stage.kind === 'build');
  const perPiece = materialPerPiece(lab, economics, part, history);
  const output = {
    part: part.name,
    madeJobs,
    madePieces,
    sentOutJobs,
    sentOutPieces,
    material: perPiece * (isBuilt ? found.builtPieces : madePieces + found.repeatedPieces),
  };
  return {
    output,
    repeats: perPiece * (isBuilt ? found.rebuiltPieces : found.repeatedPieces),
    outside: sentOutPieces === 0 ? 0 : outsideCost(economics, part.name, sentOutPieces, sentOutJobs),
  };
}

/** @throws Error when the part has no price outside */
export function outsideCost(economics: Economics, part: string, pieces: number, jobs: number): number {
  const price = economics.parts.find((cost) => cost.part === part)?.outside ?? null;
  if (price === null) throw new Error(`"${part}" has no price outside.`);
  return pieces * price + jobs * economics.outsidePerJob;
}

function peopleCost(lab: Lab, economics: Economics, history: History, weeks: number): number {
  const fromHour = history.windowStart / MILLISECONDS_PER_HOUR;
  return total(lab.people, (group) => {
    const cost = economics.people.find((candidate) => candidate.group === group.name);
    return (cost?.perHour ?? 0) * group.count * paidHours(lab, group, weeks, fromHour);
  });
}

const OVERTIME = PERSON_STATES.indexOf('overtime');

function overtimeCost(economics: Economics, history: History): number {
  return total(history.people, (group) => {
    const cost = economics.people.find((candidate) => candidate.group === group.group);
    if (cost === undefined) return 0;
    const overtime = group.timeInState.filter((_, entry) => entry % PERSON_STATES.length === OVERTIME);
    const hours = total(overtime, (time) => time) / MILLISECONDS_PER_HOUR;
    return hours * cost.perHour * (1 + cost.overtimeSupplement);
  });
}

function total<Item>(items: Iterable<Item>, value: (item: Item) => number): number {
  let sum = 0;
  for (const item of items) sum += value(item);
  return sum;
}
