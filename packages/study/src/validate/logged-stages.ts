import type { Lab, PartType } from '@buildweek/model';
import type { LoggedStage } from '@buildweek/records';
import type { PlayedJob } from './played-jobs.ts';

/** A stage of a route of which the log knows times. */
export interface KnownStage {
  /** Name in the scenario. */
  readonly stage: string;
  /** Name in the log. */
  readonly logged: string;
  readonly isBuild: boolean;
  /** Whether the log has the work itself, breaks left out; otherwise clicks. */
  readonly isWork: boolean;
  readonly hasStart: boolean;
  readonly hasEnd: boolean;
}

/** Names in a log that mean the build, whatever the scenario calls it. */
const BUILD_WORDS = /\b(print|printing|printed|build|building|built|machine)\b/i;

/**
 * The stages of each part type of which the log knows times, in the order of the route. A stage of the log is that of
 * the route with the same name; else the one whose name holds it or is held by it; else the build, where it speaks of
 * printing.
 */
export function knownStages(
  lab: Lab,
  jobs: readonly PlayedJob[],
): ReadonlyMap<string, readonly KnownStage[]> {
  return new Map(
    lab.parts.map((part) => {
      const own = jobs.filter((job) => job.part === part.name).flatMap(({ logged }) => logged.stages);
      const names = [...new Set(own.map(({ name }) => name))];
      const found = names.flatMap((name): { at: number; known: KnownStage }[] => {
        const at = stageAt(part, name);
        const stage = part.stages[at];
        const times = own.filter((one) => one.name === name);
        const known =
          stage === undefined ? null : knownStage(stage.name, stage.kind === 'build', name, times);
        return known === null ? [] : [{ at, known }];
      });
      found.sort((a, b) => a.at - b.at);
      // Of two names for one stage the first counts.
      const kept = found.filter(({ at }, index) => found[index - 1]?.at !== at);
      return [part.name, kept.map(({ known }) => known)] as const;
    }),
  );
}

function knownStage(
  stage: string,
  isBuild: boolean,
  logged: string,
  times: readonly LoggedStage[],
): KnownStage | null {
  const hasStart = times.some(({ start }) => start !== null);
  const hasEnd = times.some(({ end }) => end !== null);
  if (!hasStart && !hasEnd) return null;
  const isWork = hasStart && hasEnd && times.every((one) => one.isWork);
  return { stage, logged, isBuild, isWork, hasStart, hasEnd };
}

/** Position in the route; -1: there is no such stage. */
function stageAt({ stages }: PartType, name: string): number {
  const wanted = plain(name);
  const same = stages.findIndex((stage) => plain(stage.name) === wanted);
  if (same >= 0) return same;
  const alike = stages.findIndex(
    (stage) => holds(plain(stage.name), wanted) || holds(wanted, plain(stage.name)),
  );
  if (alike >= 0) return alike;
  return BUILD_WORDS.test(name) ? stages.findIndex(({ kind }) => kind === 'build') : -1;
}

function holds(long: string, short: string): boolean {
  return short !== '' && long.includes(short);
}

function plain(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
